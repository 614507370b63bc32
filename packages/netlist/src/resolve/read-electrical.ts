import type { ElectricalData, JointKind, PoweredWhen, SpecialCircuit, SpecialKind } from '../harness/job.ts';
import {
  entryOf,
  itemsUnder,
  type Located,
  type LocatedText,
  rowsUnder,
  textsUnder,
  textUnder,
} from '../kit/located.ts';
import { parseLength } from '../value/index.ts';
import type { Complaints } from './complaints.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { allowanceUnder, percentUnder, quantityUnder } from './quantity-under.ts';

const jointKinds: readonly JointKind[] = ['crimp', 'contact', 'splice', 'stud'];

/** Reads the electrical data that hold for the whole kit. */
export function readElectrical(document: Located, builder: HarnessBuilder): ElectricalData {
  const section = entryOf(document, 'electrical');
  const { complaints } = builder;
  const own = entryOf(section, 'own limits');
  const limits = textUnder(section, 'limits')?.text;
  if (limits === 'own' && own === null)
    complaints.error(
      'own-limits',
      'the limits shall be your own, and none are given',
      section?.span ?? null,
      'give them with their source under `own limits`',
    );
  return {
    limits: limits === 'small-craft' || limits === 'aircraft' || limits === 'own' ? limits : null,
    own:
      own === null
        ? null
        : {
            source: textUnder(own, 'source')?.text ?? '',
            drop: allowanceUnder(own, 'drop', complaints),
            criticalDrop: allowanceUnder(own, 'critical drop', complaints),
            fuseLoadPercent: percentUnder(own, 'fuse load', complaints),
            leadMm: lengthUnder(own, 'lead to protector', complaints),
          },
    jointOhm: jointsOf(section, complaints),
    claimed: section !== null || anyElectricalDatum(document),
  };
}

/** Keys that say something electrical; sizes, lengths and fuse ratings belong to the harness as it is drawn. */
const supplyKeys = ['volts', 'resistance'];
const elementKeys = [
  'resistance',
  'cold',
  'power',
  'volts',
  'drop',
  'least',
  'most',
  'critical',
  'unlit below',
];
const wireKeys = ['material', 'strands', 'temperature', 'insulation rating', 'capacity'];

function anyElectricalDatum(document: Located): boolean {
  const says = (row: Located, keys: readonly string[]): boolean =>
    keys.some((key) => entryOf(row, key) !== null);
  const stock = entryOf(document, 'stock');
  if (rowsUnder(stock, 'supplies').some(({ value }) => says(value, supplyKeys))) return true;
  if (rowsUnder(entryOf(document, 'wanted'), 'powered').length > 0) return true;
  return [stock, entryOf(document, 'bag')].some(
    (section) =>
      rowsUnder(section, 'wires').some(({ value }) => says(value, wireKeys)) ||
      rowsUnder(section, 'connectors').some(({ value }) => {
        const elements = entryOf(value, 'elements');
        return elements?.kind === 'list' && elements.items.some((row) => says(row, elementKeys));
      }),
  );
}

function jointsOf(section: Located | null, complaints: Complaints): ReadonlyMap<JointKind, number> {
  const ohms = new Map<JointKind, number>();
  const same = quantityUnder(section, 'joints', 'ohm', complaints);
  const each = entryOf(section, 'joints');
  for (const kind of jointKinds) {
    const ohm = each?.kind === 'map' ? quantityUnder(each, kind, 'ohm', complaints) : same;
    if (ohm !== null) ohms.set(kind, ohm);
  }
  return ohms;
}

function lengthUnder(row: Located | null, key: string, complaints: Complaints): number | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const length = parseLength(node.text);
  if (length.ok) return length.value.mm;
  complaints.error('length', length.problem, node.span, length.help);
  return null;
}

/** Reads the circuits that nobody touches without a release. */
export function readSpecial(
  document: Located,
  wiresByName: ReadonlyMap<string, number>,
  builder: HarnessBuilder,
): readonly SpecialCircuit[] {
  const { complaints } = builder;
  const all = <T>(nodes: readonly LocatedText[], what: string, known: ReadonlyMap<string, T>): readonly T[] =>
    nodes.flatMap((node) => {
      const found = known.get(node.text);
      if (found === undefined) complaints.unknown(what, node.text, node.span, known.keys());
      return found === undefined ? [] : [found];
    });
  return rowsUnder(entryOf(document, 'stock'), 'special').map(({ key, value }) => {
    const released = entryOf(value, 'released');
    return {
      name: key,
      is: specialKind(textUnder(value, 'is')?.text),
      wires: all(textsUnder(value, 'wires'), 'wire', wiresByName),
      released:
        released === null
          ? null
          : {
              by: textUnder(released, 'by')?.text ?? '',
              document: textUnder(released, 'document')?.text ?? '',
            },
      stubLimitMm: lengthUnder(value, 'stub limit', complaints),
      lengthLimitMm: lengthUnder(value, 'length limit', complaints),
      terminators: all(textsUnder(value, 'terminators'), 'element', builder.elementByName),
    };
  });
}

function specialKind(text: string | undefined): SpecialKind {
  return text === 'restraint system' || text === 'safety loop' || text === 'bus pair' || text === 'sensor'
    ? text
    : 'high voltage';
}

/** Reads in which states each load is meant to be powered. */
export function readPowered(
  document: Located,
  builder: HarnessBuilder,
): ReadonlyMap<number, readonly PoweredWhen[]> {
  const { complaints } = builder;
  const powered = new Map<number, readonly PoweredWhen[]>();
  const section = entryOf(document, 'wanted');
  const drives = driveNames(builder);
  for (const { key, keySpan } of rowsUnder(section, 'powered')) {
    const element = builder.elementByName.get(key);
    const kind = builder.elements[element ?? -1]?.kind;
    if (element === undefined || (kind !== 'load' && kind !== 'coil')) {
      const loads = builder.elements.filter((one) => one.kind === 'load' || one.kind === 'coil');
      complaints.unknown(
        'load',
        key,
        keySpan,
        loads.map((one) => one.name),
      );
      continue;
    }
    const ways = textsUnder(entryOf(section, 'powered'), key);
    if (ways.length === 1 && ways[0]?.text === 'never') powered.set(element, []);
    else if (ways.length === 1 && ways[0]?.text === 'always') powered.set(element, [{ on: [], off: [] }]);
    else
      powered.set(
        element,
        ways.map((way) => readWay(way, drives, complaints)),
      );
  }
  return powered;
}

/** Reads which sources may be joined. */
export function readMayTie(document: Located, builder: HarnessBuilder): readonly ReadonlySet<string>[] {
  const known = new Set([...driveNames(builder), ...builder.supplies.map((one) => one.name)]);
  return itemsUnder(entryOf(document, 'wanted'), 'may tie').map((row) => {
    const names =
      row.kind === 'list' ? row.items.filter((one): one is LocatedText => one.kind === 'text') : [];
    for (const { text, span } of names)
      if (!known.has(text)) builder.complaints.unknown('supply or drive', text, span, known);
    return new Set(names.map(({ text }) => text));
  });
}

function readWay(way: LocatedText, drives: ReadonlySet<string>, complaints: Complaints): PoweredWhen {
  const on: string[] = [];
  const off: string[] = [];
  for (const word of way.text.split(/\s+\+\s+/)) {
    const name = word.startsWith('not ') ? word.slice(4).trim() : word.trim();
    if (!drives.has(name)) complaints.unknown('switch or drive', name, way.span, drives);
    else (name === word.trim() ? on : off).push(name);
  }
  return { on, off };
}

/** Everything that can be on or off: switches that no coil works, drives, and pins that are a source of their own. */
function driveNames(builder: HarnessBuilder): ReadonlySet<string> {
  return new Set([
    ...builder.elements.flatMap((one) =>
      one.kind === 'drive' || (one.kind === 'switch' && one.workedBy < 0) ? [one.name] : [],
    ),
    ...builder.places.flatMap((one) =>
      one.source === 'driven' || one.source === 'switched' ? [one.address] : [],
    ),
  ]);
}
