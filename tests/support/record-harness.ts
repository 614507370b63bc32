import { formatColour, formatSize, type Job, never, type Rework, type StepAction } from '@loomproof/netlist';
import type { CopperJoin, HarnessRecord, Made, StepRecord } from './checker/harness-record.ts';

/** Writes down a finished rework as plain data for the checker, which knows nothing of the program. */
export function recordHarness(rework: Rework): HarnessRecord {
  const { job } = rework;
  const names = pointNames(job);
  return {
    joins: joinsOf(rework, names),
    places: job.places.map((place, index) => ({
      address: place.address,
      kind: place.kind,
      connector: job.connectors[place.connector]?.name ?? null,
      source: place.source,
      supplies: job.supplies.filter((one) => one.places.includes(index)).map((one) => one.name),
      chassis: place.chassis,
      kit: place.origin === 'kit',
      blocked: place.blocked,
      blanked: place.blanked,
    })),
    connectors: job.connectors.map((connector, index) => ({
      name: connector.name,
      device: connector.device,
      kit: connector.origin === 'kit',
      other: job.connectors[connector.counterpart]?.name ?? null,
      plugged: connector.plugged,
      lock: connector.lock,
      latch: connector.latch,
      leave: job.wanted.leftUnplugged.has(index),
    })),
    elements: job.elements.map((element) => ({
      name: element.name,
      kind: element.kind,
      from: job.places[element.from]?.address ?? '',
      to: job.places[element.to]?.address ?? '',
      kit: job.connectors[element.connector]?.origin === 'kit',
      fitted: element.fitted,
      ohm: element.ohm,
      watts: element.watts,
      volts: element.volts,
      dropVolts: element.dropVolts,
      ratingAmps: element.ratingAmps,
      unlitVolts: element.unlitVolts ?? 0,
      workedBy: job.elements[element.workedBy]?.name ?? null,
      restClosed: element.restClosed,
    })),
    ends: job.ends.map((end) => ({
      name: end.name,
      wire: job.wires[end.wire]?.name ?? '',
      kitWire: job.wires[end.wire]?.origin === 'kit',
      stripped:
        end.home.kind === 'place' ||
        end.home.kind === 'joint' ||
        (end.home.kind === 'free' && end.home.stripped),
      sealed: end.seal !== null,
      cover: end.home.kind === 'free' ? end.home.cover : null,
    })),
    terminals: job.terminals.map((terminal) => {
      const part = job.parts.get(terminal.part ?? '');
      return {
        point: names.get(terminal.node) ?? '',
        ring: part?.is === 'terminal' ? part.ring : null,
      };
    }),
    supplies: job.supplies.map((one) => one.name),
    feeds: job.supplies.map(({ name, volts, places }) => ({
      name,
      volts,
      places: places.map((place) => job.places[place]?.address ?? ''),
    })),
    wires: new Map(
      job.wires.map(({ name, size, material, strands, temperatureC }) => [
        name,
        { mm2: size?.mm2 ?? null, material, strands, temperatureC },
      ]),
    ),
    jointOhm: job.electrical.jointOhm,
    fuseRatings: new Map(
      [...job.parts].flatMap(([name, part]) =>
        part.is === 'fuse' && part.ratingAmps !== null ? [[name, part.ratingAmps] as const] : [],
      ),
    ),
    powered: new Map(
      [...job.wanted.powered].map(([load, ways]) => [job.elements[load]?.name ?? '', ways] as const),
    ),
    returns: job.places.flatMap(({ address, chassis }, index) =>
      job.supplies.some(({ returnPlace }) => returnPlace === index || (returnPlace < 0 && chassis))
        ? [address]
        : [],
    ),
    steps: job.steps.map(({ number, action }) => stepRecord(number, action, job)),
    bag: job.bag,
  };
}

function pointNames(job: Job): ReadonlyMap<number, string> {
  const names = new Map<number, string>(job.places.map((place, index) => [index, place.address]));
  for (const end of job.ends) names.set(end.node, end.name);
  for (const joint of job.joints) names.set(joint.node, joint.name);
  for (const [index, terminal] of job.terminals.entries()) {
    const fitted = job.steps.find(
      ({ action }) => action.kind === 'fit terminal' && action.terminal === index,
    )?.action;
    const first = terminal.ends[0] ?? (fitted?.kind === 'fit terminal' ? fitted.ends[0] : undefined);
    const of = first === undefined ? `terminal ${index}` : (job.ends[first]?.name ?? '');
    names.set(terminal.node, `terminal of ${of}`);
  }
  return names;
}

function joinsOf({ job, graph }: Rework, names: ReadonlyMap<number, string>): readonly CopperJoin[] {
  return Array.from({ length: graph.edgeCount }, (_, edge): CopperJoin => {
    const by = graph.kindOf(edge);
    const what = graph.whatOf(edge);
    const since = graph.birthOf(edge);
    const until = graph.deathOf(edge);
    const wire = by === 'conductor' ? job.wires[what] : undefined;
    const crimped = job.ends[job.terminals[what]?.ends[0] ?? -1];
    const asFound: Made =
      (by === 'mate'
        ? job.connectors[what]?.origin
        : by === 'joint'
          ? job.joints[what]?.origin
          : job.wires[crimped?.wire ?? -1]?.origin) ?? 'stock';
    return {
      by,
      from: names.get(graph.fromOf(edge)) ?? '',
      to: names.get(graph.toOf(edge)) ?? '',
      name: wire?.name ?? (by === 'jumper' ? (job.joints[what]?.name ?? null) : null),
      colour: wire?.colour == null ? null : formatColour(wire.colour),
      size: wire?.size == null ? null : formatSize(wire.size),
      // A conductor stays the wire that it was, whoever cut it.
      made: wire !== undefined ? wire.origin : since > 0 ? (job.steps[since - 1]?.number ?? 0) : asFound,
      since,
      until: until === never ? null : until,
      lengthMm: wire === undefined ? null : lengthOf(job, wire, graph.fromOf(edge), graph.toOf(edge)),
    };
  });
}

/** Length between two points of a wire, each a known distance from one of its ends. */
function lengthOf(job: Job, wire: Job['wires'][number], from: number, to: number): number | null {
  const whole = wire.lengthMm;
  // Each point as millimetres from the first end, as far as that can be said.
  const at = (node: number): { first: number | null; last: number | null } => {
    const marked = job.positions.get(node);
    const side = wire.ends.findIndex((end) => job.ends[end]?.node === node);
    const fromEnd = marked?.fromEnd ?? side;
    const mm = marked?.mm ?? 0;
    const other = whole === null ? null : whole - mm;
    return fromEnd === 0 ? { first: mm, last: other } : { first: other, last: mm };
  };
  const [a, b] = [at(from), at(to)];
  if (a.first !== null && b.first !== null) return Math.abs(a.first - b.first);
  if (a.last !== null && b.last !== null) return Math.abs(a.last - b.last);
  return null;
}

function stepRecord(number: number, action: StepAction, job: Job): StepRecord {
  const end = (index: number): string => job.ends[index]?.name ?? '';
  const place = (index: number): string => job.places[index]?.address ?? '';
  const connector = (index: number): string => job.connectors[index]?.name ?? '';
  const piece = (index: number): string => job.pieces[index]?.name ?? '';
  const pieceAt = (index: number): Pick<StepRecord, 'piece' | 'pieceEnds'> => ({
    piece: job.pieces[index]?.name ?? '',
    pieceEnds: (job.pieces[index]?.ends ?? []).map(end),
  });
  const part = (name: string | null): string[] => (name === null ? [] : [name]);
  const blank: StepRecord = {
    number,
    does: action.kind,
    connectors: [],
    places: [],
    ends: [],
    joint: null,
    supply: null,
    fuse: null,
    piece: null,
    pieceEnds: [],
    leaves: [],
    newEnds: [],
    takes: [],
  };
  switch (action.kind) {
    case 'disconnect':
    case 'reconnect':
      return { ...blank, supply: job.supplies[action.supply]?.name ?? '' };
    case 'prove dead':
    case 'withdraw':
    case 'remove plug':
      return { ...blank, places: [place(action.place)] };
    case 'fit plug':
      return { ...blank, places: [place(action.place)], takes: [action.part] };
    case 'unplug':
    case 'plug':
    case 'open lock':
    case 'close lock':
    case 'open latch':
    case 'close latch':
    case 'place':
      return { ...blank, connectors: [connector(action.connector)] };
    case 'interpose':
      return { ...blank, connectors: [action.connector, action.near, action.far].map(connector) };
    case 'cut':
      return {
        ...blank,
        ...pieceAt(action.piece),
        leaves: action.leaves.map(piece),
        newEnds: action.newEnds.map(end),
      };
    case 'strip':
    case 'detach':
    case 'remove seal':
      return { ...blank, ends: [end(action.end)] };
    case 'slide tube':
    case 'fit seal':
      return { ...blank, ends: [end(action.end)], takes: [action.part] };
    case 'tie back':
      return { ...blank, ends: [end(action.end)], takes: part(action.part) };
    case 'join': {
      const joint = job.joints[action.joint];
      return {
        ...blank,
        ends: action.ends.map(end),
        joint: joint?.name ?? '',
        takes: part(joint?.part ?? null),
      };
    }
    case 'seal':
    case 'remove tap':
    case 'remove jumper':
      return { ...blank, joint: job.joints[action.joint]?.name ?? '' };
    case 'tap': {
      const joint = job.joints[action.joint];
      return {
        ...blank,
        ...pieceAt(action.piece),
        ends: [end(action.branch)],
        joint: joint?.name ?? '',
        takes: part(joint?.part ?? null),
      };
    }
    case 'fit terminal':
      return {
        ...blank,
        ends: action.ends.map(end),
        takes: [...part(job.terminals[action.terminal]?.part ?? null), ...part(action.seal)],
      };
    case 'insert':
    case 'attach':
      return { ...blank, ends: [end(action.end)], places: [place(action.place)] };
    case 'cover':
      return action.joint >= 0
        ? { ...blank, joint: job.joints[action.joint]?.name ?? '', takes: [action.part] }
        : { ...blank, ends: [end(action.end)], takes: [action.part] };
    case 'fasten':
      return { ...blank, ...pieceAt(action.piece), takes: part(action.part) };
    case 'fit fuse':
      return { ...blank, fuse: job.elements[action.element]?.name ?? '', takes: [action.part] };
    case 'remove fuse':
      return { ...blank, fuse: job.elements[action.element]?.name ?? '' };
    case 'fit jumper':
      return {
        ...blank,
        places: action.places.map(place),
        joint: job.joints[action.joint]?.name ?? '',
        takes: part(action.part),
      };
    case 'remove off-cut':
      return { ...blank, ...pieceAt(action.piece) };
    default:
      throw new TypeError(`unknown step ${JSON.stringify(action)}`);
  }
}
