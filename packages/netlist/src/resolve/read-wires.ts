import type { Origin, Wire, Zone } from '../harness/job.ts';
import { bareEnd } from '../kit/kit-schema.ts';
import type { Located, LocatedEntry, LocatedText } from '../kit/located.ts';
import { entryOf, rowsUnder, textUnder } from '../kit/located.ts';
import { parseColour, parseLength, parseSize } from '../value/index.ts';
import { checkName } from './check-name.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { materialUnder, quantityUnder, strandsUnder } from './quantity-under.ts';
import { isYes, lengthUnder, zoneUnder } from './read-parts.ts';

/** Reads one row a conductor, with both its ends, into the builder. */
export function readWires(
  section: Located | null,
  origin: Origin,
  sectionZone: Zone,
  builder: HarnessBuilder,
): void {
  for (const entry of rowsUnder(section, 'wires')) {
    if (!checkName(entry, 'wire', builder)) continue;
    if (builder.wireByName.has(entry.key)) {
      builder.complaints.error('written-twice', `wire \`${entry.key}\` is there already`, entry.keySpan);
      continue;
    }
    readWire(entry, origin, sectionZone, builder);
  }
}

function readWire(entry: LocatedEntry, origin: Origin, sectionZone: Zone, builder: HarnessBuilder): void {
  const row = entry.value;
  const { complaints } = builder;
  const parsed = <T>(
    key: string,
    parse: (raw: string) => { ok: true; value: T } | { ok: false; problem: string; help: string | null },
  ): T | null => {
    const node = textUnder(row, key);
    if (node === null) return null;
    const result = parse(node.text);
    if (result.ok) return result.value;
    complaints.error(key, result.problem, node.span, result.help);
    return null;
  };
  const index = builder.wires.length;
  builder.wireByName.set(entry.key, index);
  const own = zoneUnder(row);
  const ends = [
    readEnd(entry, 'from', origin, index, builder),
    readEnd(entry, 'to', origin, index, builder),
  ] as const;
  if (builder.ends[ends[0]]?.name === builder.ends[ends[1]]?.name) {
    complaints.error(
      'same-ends',
      `both ends of \`${entry.key}\` have the same name`,
      entry.keySpan,
      'name the ends differently, such as A and B',
    );
  }
  builder.wires.push({
    name: entry.key,
    origin,
    size: parsed('size', parseSize),
    insulationMm: parsed('insulation', parseLength)?.mm ?? null,
    colour: parsed('colour', parseColour),
    lengthMm: parsed('length', parseLength)?.mm ?? null,
    ...electricalOf(row, builder),
    zone: own === 'unknown' ? sectionZone : own,
    flex: isYes(row, 'flex'),
    stripMm: [lengthUnder(row, 'from strip', complaints), lengthUnder(row, 'to strip', complaints)],
    ends,
    span: entry.keySpan,
  });
  builder.pieces.push({ name: entry.key, wire: index, ends });
}

/** What the row says of the conductor itself; null where the kit as a whole may say it. */
function electricalOf(
  row: Located,
  builder: HarnessBuilder,
): Pick<Wire, 'material' | 'strands' | 'temperatureC' | 'insulationC' | 'capacityAmps'> {
  return {
    material: materialUnder(row) ?? builder.wireDefaults.material,
    strands: strandsUnder(row) ?? builder.wireDefaults.strands,
    temperatureC:
      quantityUnder(row, 'temperature', 'C', builder.complaints) ?? builder.wireDefaults.temperatureC,
    insulationC:
      quantityUnder(row, 'insulation rating', 'C', builder.complaints) ?? builder.wireDefaults.insulationC,
    capacityAmps: quantityUnder(row, 'capacity', 'A', builder.complaints),
  };
}

function readEnd(
  entry: LocatedEntry,
  side: 'from' | 'to',
  origin: Origin,
  wire: number,
  builder: HarnessBuilder,
): number {
  const row = entry.value;
  const node = textUnder(row, side);
  const home = node?.text ?? '';
  const name = `${entry.key}@${home}`;
  const terminal = partUnder(row, `${side} terminal`, 'terminal', builder);
  const seal = partUnder(row, `${side} seal`, 'seal', builder);
  const cover = coverUnder(row, `${side} cover`, builder);
  const place = builder.placeByAddress.get(home);
  const joint = builder.jointByName.get(home);
  if (cover !== undefined && (place !== undefined || joint !== undefined)) {
    builder.complaints.error(
      'cover',
      `\`${name}\` is not loose, so nothing covers it`,
      entryOf(row, `${side} cover`)?.span ?? null,
      'give a loose end a name of its own, such as A',
    );
  }
  if (place !== undefined && (origin === 'stock' || builder.places[place]?.origin === 'kit')) {
    return endAtPlace(name, wire, place, terminal?.text ?? null, seal?.text ?? null, node, builder);
  }
  if (joint !== undefined && (origin === 'stock' || builder.joints[joint]?.origin === 'kit')) {
    return builder.addEnd({ name, wire, home: { kind: 'joint', joint }, seal: seal?.text ?? null });
  }
  if (place !== undefined || joint !== undefined) {
    builder.complaints.error(
      'bag-end',
      `kit wire \`${entry.key}\` cannot come out of the bag already at \`${home}\` of the stock harness`,
      node?.span ?? null,
      'give the end a name of its own, such as A, and put it there by a step',
    );
  } else if (node !== null && ((origin === 'stock' && cover === undefined) || home.includes(':'))) {
    builder.unknownPlace('place or splice', home, node.span);
  }
  const end = builder.addEnd({
    name,
    wire,
    home: { kind: 'free', stripped: false, terminal: -1, cover: cover ?? null },
    seal: seal?.text ?? null,
  });
  if (terminal !== null) {
    const index = builder.addTerminal(terminal.text, -1);
    builder.crimp(index, end);
    const made = builder.ends[end];
    if (made !== undefined)
      builder.ends[end] = {
        ...made,
        home: { kind: 'free', stripped: true, terminal: index, cover: cover ?? null },
      };
  }
  return end;
}

/** What covers a loose end or the wound of a tap: a part, null for `none`, or undefined where the row says nothing of it. */
export function coverUnder(row: Located, key: string, builder: HarnessBuilder): string | null | undefined {
  const node = textUnder(row, key);
  if (node === null) return undefined;
  if (node.text === bareEnd) return null;
  const part = builder.parts.get(node.text);
  if (part === undefined) builder.complaints.unknown('part', node.text, node.span, builder.parts.keys());
  return node.text;
}

function endAtPlace(
  name: string,
  wire: number,
  place: number,
  part: string | null,
  seal: string | null,
  node: LocatedText | null,
  builder: HarnessBuilder,
): number {
  const where = builder.places[place];
  if (where?.blocked === true)
    builder.complaints.error(
      'blocked',
      `\`${where.address}\` is blocked and holds nothing`,
      node?.span ?? null,
    );
  if (where?.blanked === true)
    builder.complaints.error(
      'blanked',
      `\`${where.address}\` holds a plug, so no wire can be there`,
      node?.span ?? null,
    );
  if (where !== undefined && where.connector >= 0 && builder.connectors[where.connector]?.device === true) {
    builder.complaints.error(
      'device-pin',
      `\`${where.address}\` is a pin of a device; a wire ends in the connector that is plugged into it`,
      node?.span ?? null,
    );
  }
  // Several wires at one cavity are one terminal (a double crimp); several at a stud are one ring each.
  let terminal = where?.kind === 'cavity' ? builder.terminalAtPlace.get(place) : undefined;
  if (terminal === undefined) {
    terminal = builder.addTerminal(part, place);
    if (where?.kind === 'cavity') builder.terminalAtPlace.set(place, terminal);
  } else {
    const earlier = builder.terminals[terminal];
    if (earlier !== undefined && part !== null && earlier.part !== null && earlier.part !== part) {
      builder.complaints.error(
        'terminal',
        `\`${where?.address ?? ''}\` holds one terminal, but two kinds are named for it`,
        node?.span ?? null,
      );
    } else if (earlier !== undefined && earlier.part === null)
      builder.terminals[terminal] = { ...earlier, part };
  }
  const end = builder.addEnd({ name, wire, home: { kind: 'place', place, terminal }, seal });
  builder.crimp(terminal, end);
  return end;
}

/** A part name under a key, checked to be of the kind that belongs there. */
export function partUnder(
  row: Located,
  key: string,
  is: string,
  builder: HarnessBuilder,
): LocatedText | null {
  const node = textUnder(row, key);
  if (node === null) return null;
  const part = builder.parts.get(node.text);
  if (part === undefined) {
    builder.complaints.unknown('part', node.text, node.span, builder.parts.keys());
    return null;
  }
  if (part.is !== is) {
    builder.complaints.error('part-kind', `\`${node.text}\` is a ${part.is} and no ${is}`, node.span);
    return null;
  }
  return node;
}
