import type { BagRows, HarnessRows, KitDocument, StepRow, StockRows } from '../oracle/kit-document.ts';
import type { RandomChoice } from './random-choice.ts';

/** Every name that a kit gives to something, in the order met. */
function namesIn(kit: KitDocument): readonly string[] {
  const ofHarness = (rows: HarnessRows | undefined): string[] => [
    ...(rows?.connectors?.keys() ?? []),
    ...(rows?.studs?.keys() ?? []),
    ...(rows?.splices?.keys() ?? []),
    ...(rows?.wires?.keys() ?? []),
    ...[...(rows?.connectors?.values() ?? [])].flatMap((row) =>
      (row.elements ?? []).flatMap((one) => one.name ?? []),
    ),
  ];
  return [
    ...ofHarness(kit.stock),
    ...ofHarness(kit.bag),
    ...(kit.stock.supplies?.keys() ?? []),
    ...(kit.stock.boundaries?.keys() ?? []),
    ...(kit.parts?.keys() ?? []),
    ...(kit.wanted.circuits?.keys() ?? []),
    ...(kit.wanted.additions?.keys() ?? []),
    ...kit.work.flatMap((step) =>
      step.do === 'cut'
        ? step.leaves
        : step.do === 'join' || step.do === 'tap' || step.do === 'fit jumper'
          ? [step.as]
          : [],
    ),
  ];
}

/** The kit with every name replaced by another, one to one; labels, sizes and words of the form stay. */
export function renamedKit(kit: KitDocument, random: RandomChoice): KitDocument {
  const old = [...new Set(namesIn(kit))];
  const fresh = new Map(
    random.shuffled(old).map((name, index) => [name, `${random.pick(['Z', 'a', '9', 'é'])}${index}`]),
  );
  const name = (text: string): string => fresh.get(text) ?? text;
  // An address, or a stud, splice or piece by its name alone; own labels of kit ends are none of these.
  const point = (text: string): string => {
    const colon = text.lastIndexOf(':');
    return colon < 0 ? name(text) : `${name(text.slice(0, colon))}${text.slice(colon)}`;
  };
  const end = (text: string): string => {
    const at = text.lastIndexOf('@');
    return at < 0 ? name(text) : `${name(text.slice(0, at))}@${point(text.slice(at + 1))}`;
  };
  const mark = (text: string): string => {
    const [, distance = '', label = ''] = /^(\S+ mm from )(.+)$/.exec(text) ?? [];
    return `${distance}${point(label)}`;
  };
  const keyed = <T>(rows: Map<string, T> | undefined, value: (row: T) => T): Map<string, T> =>
    new Map([...(rows ?? [])].map(([key, row]) => [name(key), value(row)]));
  const harness = <T extends HarnessRows>(rows: T): T => ({
    ...rows,
    connectors: keyed(rows.connectors, (row) => ({
      ...row,
      ...(row.into === undefined ? {} : { into: name(row.into) }),
      ...(row.accepts === undefined ? {} : { accepts: row.accepts.map(name) }),
      ...(row.elements === undefined
        ? {}
        : {
            elements: row.elements.map((one) =>
              one.name === undefined ? one : { ...one, name: name(one.name) },
            ),
          }),
    })),
    studs: keyed(rows.studs, (row) => row),
    splices: keyed(rows.splices, (row) => row),
    wires: keyed(rows.wires, (row) => ({
      ...row,
      from: point(row.from),
      to: point(row.to),
      ...Object.fromEntries(
        (['from terminal', 'to terminal', 'from seal', 'to seal'] as const).flatMap((key) => {
          const part = row[key];
          return part === undefined ? [] : [[key, name(part)]];
        }),
      ),
    })),
  });
  const stock: StockRows = {
    ...harness(kit.stock),
    supplies: keyed(kit.stock.supplies, (row) => ({ at: row.at.map(point) })),
    boundaries: keyed(kit.stock.boundaries, (row) => row),
  };
  const bag: BagRows = { ...harness(kit.bag ?? {}), parts: keyed(kit.bag?.parts, (count) => count) };
  const step = (row: StepRow): StepRow => {
    const changed = new Map<string, unknown>(
      Object.entries(row).map(([key, value]) => {
        if (key === 'do' || key === 'zone' || key === 'serves') return [key, value];
        if (key === 'at')
          return [key, row.do === 'cut' || row.do === 'tap' ? mark(String(value)) : point(String(value))];
        if (key === 'ends' || key === 'leaves') return [key, (value as string[]).map(end)];
        if (key === 'between') return [key, (value as string[]).map(point)];
        if (key === 'end' || key === 'branch') return [key, end(String(value))];
        return [key, point(String(value))];
      }),
    );
    return Object.fromEntries(changed) as StepRow;
  };
  const { wanted } = kit;
  return {
    ...kit,
    parts: keyed(kit.parts, (row) => row),
    stock,
    bag,
    work: kit.work.map(step),
    wanted: {
      ...wanted,
      circuits: keyed(wanted.circuits, (places) => places.map(point)),
      additions: keyed(wanted.additions, (row) => ({
        to: point(row.to),
        ...(row.add === undefined ? {} : { add: row.add.map(point) }),
        ...(row.take === undefined ? {} : { take: row.take.map(point) }),
      })),
      moves: (wanted.moves ?? []).map(({ from, to }) => ({ from: point(from), to: point(to) })),
      retired: (wanted.retired ?? []).map((row) =>
        'wire' in row ? { wire: name(row.wire) } : { cavity: point(row.cavity) },
      ),
      stubs: (wanted.stubs ?? []).map((row) => ({ ...row, of: name(row.of), at: point(row.at) })),
      apart: (wanted.apart ?? []).map((row) => row.map(point)),
      'left unplugged': (wanted['left unplugged'] ?? []).map(name),
      interposed: (wanted.interposed ?? []).map(({ at, near, far }) => ({
        at: name(at),
        near: name(near),
        far: name(far),
      })),
      deviations: (wanted.deviations ?? []).map((row) =>
        row.at === undefined ? row : { ...row, at: row.at.includes('@') ? end(row.at) : point(row.at) },
      ),
    },
  };
}

/** The kit with everything that is a set written in another order; steps keep theirs. */
export function reorderedKit(kit: KitDocument, random: RandomChoice): KitDocument {
  const mixed = <T>(rows: Map<string, T> | undefined): Map<string, T> =>
    new Map(random.shuffled([...(rows ?? [])]));
  const list = <T>(rows: readonly T[] | undefined): T[] => random.shuffled([...(rows ?? [])]);
  const harness = <T extends HarnessRows>(rows: T): T => ({
    ...rows,
    connectors: mixed(rows.connectors),
    studs: mixed(rows.studs),
    splices: mixed(rows.splices),
    wires: mixed(rows.wires),
  });
  const { wanted } = kit;
  const circuits = new Map([...mixed(wanted.circuits)].map(([name, places]) => [name, list(places)]));
  return {
    ...kit,
    parts: mixed(kit.parts),
    stock: {
      ...harness(kit.stock),
      supplies: mixed(kit.stock.supplies),
      boundaries: mixed(kit.stock.boundaries),
    },
    bag: { ...harness(kit.bag ?? {}), parts: mixed(kit.bag?.parts) },
    wanted: {
      ...wanted,
      circuits,
      additions: mixed(wanted.additions),
      moves: list(wanted.moves),
      retired: list(wanted.retired),
      stubs: list(wanted.stubs),
      apart: list(wanted.apart).map((row) => list(row)),
      interposed: list(wanted.interposed),
    },
  };
}

/** The kit with one stock splice made of two that a short wire joins, or null where there is no stock splice. */
export function splitSpliceKit(kit: KitDocument, random: RandomChoice): KitDocument | null {
  const splices = [...(kit.stock.splices?.keys() ?? [])];
  if (splices.length === 0) return null;
  const [splice, twin, link] = [random.pick(splices), 'twin of the splice', 'short wire between splices'];
  const wires = new Map(kit.stock.wires ?? []);
  const moved = [...wires].filter(([, row]) => (row.from === splice) !== (row.to === splice));
  if (moved.length === 0) return null;
  const [wire, row] = random.pick(moved);
  wires.set(wire, { ...row, ...(row.from === splice ? { from: twin } : { to: twin }) });
  wires.set(link, { from: splice, to: twin, size: '0.5 mm2', insulation: '1.8 mm', length: '100 mm' });
  // Whatever speaks of the wire's end at the splice now speaks of its end at the twin; pieces of it keep their own names.
  const pieces = new Set([wire]);
  const work = kit.work.map((step): StepRow => {
    const end = (text: string): string => {
      const at = text.lastIndexOf('@');
      return pieces.has(text.slice(0, at)) && text.slice(at + 1) === splice
        ? `${text.slice(0, at)}@${twin}`
        : text;
    };
    const mark = (of: string, text: string): string =>
      pieces.has(of) && text.endsWith(` mm from ${splice}`)
        ? text.replace(` mm from ${splice}`, ` mm from ${twin}`)
        : text;
    if (step.do === 'cut') {
      const changed = { ...step, at: mark(step.wire, step.at) };
      if (pieces.has(step.wire)) for (const name of step.leaves) pieces.add(name);
      return changed;
    }
    if (step.do === 'tap') return { ...step, at: mark(step.run, step.at), branch: end(step.branch) };
    if (step.do === 'join' || step.do === 'fit terminal') return { ...step, ends: step.ends.map(end) };
    return 'end' in step ? ({ ...step, end: end(step.end) } as StepRow) : step;
  });
  const stock = { ...kit.stock, wires, splices: new Map([...(kit.stock.splices ?? []), [twin, {}]]) };
  return { ...kit, stock, work };
}
