import { type Face, faceSchema, facingLabels, readFace } from '../face/index.ts';
import type { DeviceElement, Origin, SourceClass, Zone } from '../harness/job.ts';
import type { Located, LocatedEntry } from '../kit/located.ts';
import { entryOf, itemsUnder, rowsUnder, textsUnder, textUnder } from '../kit/located.ts';
import { plainOf } from '../kit/plain-of.ts';
import type { QuantityUnit } from '../value/index.ts';
import { checkName, isTaken } from './check-name.ts';
import { textOr } from './complaints.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { materialUnder, quantityUnder, strandsUnder } from './quantity-under.ts';
import { readLabels } from './read-labels.ts';
import { countUnder, isYes, zoneUnder } from './read-parts.ts';
import { placeTaps, readTaps } from './read-taps.ts';
import { partUnder, readWires } from './read-wires.ts';

/** Reads the stock harness and the bag into the builder: places first, then what joins them. */
export function readHarness(document: Located, builder: HarnessBuilder): void {
  const sections: readonly [Origin, Located | null][] = [
    ['stock', entryOf(document, 'stock')],
    ['kit', entryOf(document, 'bag')],
  ];
  for (const [origin, section] of sections) readPlaces(section, origin, builder);
  for (const [, section] of sections) pairConnectors(section, builder);
  for (const [origin, section] of sections) {
    readSplices(section, origin, builder);
    readElements(section, entryOf(document, 'electrical'), builder);
  }
  readWorked(builder);
  readWireDefaults(entryOf(document, 'electrical'), builder);
  readTaps(entryOf(document, 'stock'), builder);
  for (const [origin, section] of sections) readWires(section, origin, defaultZone(section), builder);
  placeTaps(entryOf(document, 'stock'), builder);
  readSupplies(entryOf(document, 'stock'), builder);
}

function readWireDefaults(electrical: Located | null, builder: HarnessBuilder): void {
  builder.wireDefaults = {
    material: materialUnder(electrical),
    strands: strandsUnder(electrical),
    temperatureC: quantityUnder(electrical, 'temperature', 'C', builder.complaints),
    insulationC: quantityUnder(electrical, 'insulation rating', 'C', builder.complaints),
  };
}

function defaultZone(section: Located | null): Zone {
  return section === null ? 'unknown' : zoneUnder(section);
}

function readPlaces(section: Located | null, origin: Origin, builder: HarnessBuilder): void {
  const zone = defaultZone(section);
  for (const entry of rowsUnder(section, 'connectors')) readConnector(entry, origin, zone, builder);
  for (const entry of rowsUnder(section, 'studs')) {
    if (!checkName(entry, 'stud', builder) || isTaken(entry, builder)) continue;
    const own = zoneUnder(entry.value);
    builder.addPlace({
      address: entry.key,
      kind: 'stud',
      connector: -1,
      label: entry.key,
      origin,
      source: sourceOf(textUnder(entry.value, 'source')?.text),
      chassis: isYes(entry.value, 'chassis'),
      holds:
        textUnder(entry.value, 'holds') === null
          ? null
          : countUnder(entry.value, 'holds', 1, builder.complaints),
      zone: own === 'unknown' ? zone : own,
      blocked: false,
      blanked: false,
      distinct: false,
    });
  }
  for (const entry of rowsUnder(section, 'boundaries')) {
    if (!checkName(entry, 'boundary', builder) || isTaken(entry, builder)) continue;
    const own = zoneUnder(entry.value);
    builder.addPlace({
      address: entry.key,
      kind: 'boundary',
      connector: -1,
      label: entry.key,
      origin,
      source: sourceOf(textUnder(entry.value, 'source')?.text),
      chassis: false,
      holds: null,
      zone: own === 'unknown' ? zone : own,
      blocked: false,
      blanked: false,
      distinct: isYes(entry.value, 'distinct'),
    });
  }
}

function readConnector(
  entry: LocatedEntry,
  origin: Origin,
  sectionZone: Zone,
  builder: HarnessBuilder,
): void {
  if (!checkName(entry, 'connector', builder)) return;
  const { complaints } = builder;
  if (builder.connectorByName.has(entry.key)) {
    complaints.error('written-twice', `connector \`${entry.key}\` is there already`, entry.keySpan);
    return;
  }
  const row = entry.value;
  const labels = readLabels(textsUnder(row, 'cavities'), complaints);
  const known = new Set(labels);
  const alone = textUnder(row, 'cavities');
  if (alone !== null && labels.length === 1 && /^\p{L}?\d+-\p{L}?\d+$/u.test(alone.text))
    complaints.error(
      'label-range',
      `\`${alone.text}\` may be a range of labels or the one label of \`${entry.key}\``,
      alone.span,
      `write \`${alone.text.replace('-', '..')}\` for the range, or \`[${alone.text}]\` for the one label`,
    );
  const own = zoneUnder(row);
  const zone = own === 'unknown' ? sectionZone : own;
  const device = isYes(row, 'device');
  const pick = (key: string): ReadonlySet<string> => {
    const chosen = readLabels(textsUnder(row, key), complaints);
    for (const label of chosen)
      if (!known.has(label))
        complaints.unknown(`cavity of ${entry.key}`, label, entryOf(row, key)?.span ?? null, known);
    return new Set(chosen);
  };
  const blocked = pick('blocked');
  const blanked = pick('blanked');
  const sources = new Map<string, SourceClass>();
  for (const one of rowsUnder(row, 'source')) {
    for (const label of readLabels([{ kind: 'text', text: one.key, span: one.keySpan }], complaints)) {
      if (!known.has(label)) complaints.unknown(`cavity of ${entry.key}`, label, one.keySpan, known);
      if (sources.has(label))
        complaints.error('written-twice', `the source of \`${label}\` is said twice`, one.keySpan);
      sources.set(label, sourceOf(textOr(one.value)));
    }
  }
  const accepts = entryOf(row, 'accepts') === null ? null : new Set<string>();
  for (const one of textsUnder(row, 'accepts')) {
    const part = builder.parts.get(one.text);
    if (part === undefined) complaints.unknown('part', one.text, one.span, builder.parts.keys());
    else if (part.is !== 'terminal')
      complaints.error('part-kind', `\`${one.text}\` is a ${part.is} and no terminal`, one.span);
    accepts?.add(one.text);
  }
  const index = builder.connectors.length;
  builder.connectorByName.set(entry.key, index);
  const firstPlace = builder.places.length;
  // A harness connector passes on what its other half carries; only a device or a half without partner can be a source itself.
  const passes = !device && textUnder(row, 'into') !== null;
  for (const label of labels) {
    builder.addPlace({
      address: `${entry.key}:${label}`,
      kind: 'cavity',
      connector: index,
      label,
      origin,
      source:
        sources.get(label) ?? (passes || (device && entryOf(row, 'elements') !== null) ? 'never' : 'unknown'),
      chassis: false,
      holds: null,
      zone,
      blocked: blocked.has(label),
      blanked: blanked.has(label),
      distinct: false,
    });
  }
  builder.connectors.push({
    name: entry.key,
    origin,
    device,
    firstPlace,
    placeCount: labels.length,
    counterpart: -1,
    plugged: false,
    accepts,
    sealed: isYes(row, 'sealed'),
    lock: lockOf(row, 'lock'),
    latch: lockOf(row, 'latch'),
    zone,
    face: readFaceOf(row, labels, builder),
    span: entry.keySpan,
  });
}

/** Fills in both halves of each pair. The half that faces a connector with its own contacts is no source by itself. */
function pairConnectors(section: Located | null, builder: HarnessBuilder): void {
  for (const { key, value } of rowsUnder(section, 'connectors')) {
    const into = textUnder(value, 'into');
    const own = builder.connectorByName.get(key);
    if (into === null || own === undefined) continue;
    const other = builder.connectorByName.get(into.text);
    if (other === undefined) {
      builder.complaints.unknown('connector', into.text, into.span, builder.connectorByName.keys());
      continue;
    }
    const [mine, theirs] = [builder.connectors[own], builder.connectors[other]];
    if (mine === undefined || theirs === undefined) continue;
    if (mine.counterpart >= 0 || theirs.counterpart >= 0 || own === other) {
      builder.complaints.error(
        'plugged-twice',
        `\`${key}\` and \`${into.text}\` cannot be plugged: one has another half already`,
        into.span,
      );
      continue;
    }
    // What comes out of the bag is not plugged until a step plugs it.
    const loose = mine.origin === 'kit' || theirs.origin === 'kit';
    const said = textUnder(value, 'plugged')?.text;
    const plugged = said === undefined ? !loose : isYes(value, 'plugged');
    builder.connectors[own] = { ...mine, counterpart: other, plugged };
    builder.connectors[other] = { ...theirs, counterpart: own, plugged };
    // A plain half that faces this one passes current on and is no source of its own, unless its row says so.
    if (!theirs.device) settleSources(other, builder);
  }
}

function settleSources(connector: number, builder: HarnessBuilder): void {
  const { firstPlace, placeCount } = builder.connectors[connector] ?? { firstPlace: 0, placeCount: 0 };
  for (let at = firstPlace; at < firstPlace + placeCount; at += 1) {
    const place = builder.places[at];
    if (place?.source === 'unknown') builder.places[at] = { ...place, source: 'never' };
  }
}

/** The cavity of the other half that faces each cavity, by the declared pairing or by equal labels; -1 where none. */
export function facingPlaces(document: Located, builder: HarnessBuilder): Int32Array {
  const facing = new Int32Array(builder.places.length).fill(-1);
  for (const section of ['stock', 'bag']) {
    for (const { key, value } of rowsUnder(entryOf(document, section), 'connectors')) {
      const into = textUnder(value, 'into');
      const mine = builder.connectors[builder.connectorByName.get(key) ?? -1];
      if (into === null || mine === undefined || mine.counterpart < 0) continue;
      const pairing = entryOf(value, 'pairing');
      const pairs = new Map(rowsUnder(value, 'pairing').map((one) => [one.key, one] as const));
      for (const [label, one] of pairs) {
        if (!builder.placeByAddress.has(`${key}:${label}`))
          builder.complaints.unknown(`cavity of ${key}`, label, one.keySpan, labelsOf(key, builder));
      }
      for (let at = mine.firstPlace; at < mine.firstPlace + mine.placeCount; at += 1) {
        const label = builder.places[at]?.label ?? '';
        const pair = pairs.get(label);
        const theirs = pairing === null ? label : pair === undefined ? null : textOr(pair.value);
        if (theirs === null) continue;
        const other = builder.placeByAddress.get(`${into.text}:${theirs}`);
        if (other === undefined) {
          builder.complaints.error(
            'pairing',
            `\`${key}:${label}\` has no counterpart: \`${into.text}\` has no cavity \`${theirs}\``,
            pair?.value.span ?? into.span,
            'where the two halves are labelled differently, give `pairing` as own label: other label',
          );
          continue;
        }
        if ((facing[other] ?? -1) >= 0)
          builder.complaints.error(
            'pairing',
            `\`${into.text}:${theirs}\` is paired twice`,
            pair?.value.span ?? into.span,
          );
        facing[at] = other;
        facing[other] = at;
      }
      const amiss = againstFaces(mine, facing, builder);
      if (amiss !== null)
        builder.complaints.error(
          'pairing',
          amiss,
          pairing?.span ?? into.span,
          'put `pairing` or one `face` right: left and right are exchanged where a face is said from the wrong side',
        );
    }
  }
  return facing;
}

/** The first cavity that lies on another one by the faces of both halves than it is paired with, or null. */
function againstFaces(
  { face, firstPlace, placeCount, counterpart }: HarnessBuilder['connectors'][number],
  facing: Int32Array,
  builder: HarnessBuilder,
): string | null {
  const other = builder.connectors[counterpart];
  if (face === null || other === undefined || other.face === null) return null;
  const lying = facingLabels(face, other.face);
  for (let at = firstPlace; at < firstPlace + placeCount; at += 1) {
    const [own, paired] = [builder.places[at], builder.places[facing[at] ?? -1]];
    const met = lying.get(own?.label ?? '');
    if (own === undefined || paired === undefined || met === undefined || met === paired.label) continue;
    return `by the faces of both halves \`${own.address}\` lies on \`${other.name}:${met}\`, and it is paired with \`${paired.address}\``;
  }
  return null;
}

function labelsOf(connector: string, builder: HarnessBuilder): readonly string[] {
  const found = builder.connectors[builder.connectorByName.get(connector) ?? -1];
  if (found === undefined) return [];
  return builder.places
    .slice(found.firstPlace, found.firstPlace + found.placeCount)
    .map((place) => place.label);
}

function readSplices(section: Located | null, origin: Origin, builder: HarnessBuilder): void {
  const zone = defaultZone(section);
  for (const entry of rowsUnder(section, 'splices')) {
    if (!checkName(entry, 'splice', builder) || isTaken(entry, builder)) continue;
    const own = zoneUnder(entry.value);
    const part = partUnder(entry.value, 'with', 'splice', builder);
    builder.addJoint({
      name: entry.key,
      kind: 'splice',
      part: part?.text ?? null,
      origin,
      zone: own === 'unknown' ? zone : own,
      before:
        textUnder(entry.value, 'sealed') === null || isYes(entry.value, 'sealed') ? 'sealed' : 'crimped',
    });
  }
}

function readElements(section: Located | null, electrical: Located | null, builder: HarnessBuilder): void {
  for (const { key, value } of rowsUnder(section, 'connectors')) {
    const connector = builder.connectorByName.get(key);
    if (connector === undefined) continue;
    const rows = itemsUnder(value, 'elements');
    if (rows.length > 0 && builder.connectors[connector]?.device === false) {
      builder.complaints.error(
        'elements',
        `\`${key}\` is no device, so nothing joins its cavities inside`,
        value.span,
        'add `device: yes`, or name the device that it is plugged into',
      );
    }
    for (const [index, row] of rows.entries()) {
      const pins = ['from', 'to'].map((side) => {
        const label = textUnder(row, side);
        const place = builder.placeByAddress.get(`${key}:${label?.text ?? ''}`);
        if (place === undefined)
          builder.complaints.unknown(
            `pin of ${key}`,
            label?.text ?? '',
            label?.span ?? row.span,
            labelsOf(key, builder),
          );
        return place ?? 0;
      });
      const kind = textUnder(row, 'is')?.text;
      const name = textUnder(row, 'name')?.text ?? `${key} ${kind ?? ''} ${index + 1}`;
      if (builder.elementByName.has(name))
        builder.complaints.error('written-twice', `\`${name}\` names two elements`, row.span);
      builder.elementByName.set(name, builder.elements.length);
      builder.elements.push({
        kind: elementKind(kind),
        name,
        from: pins[0] ?? 0,
        to: pins[1] ?? 0,
        connector,
        fitted: textUnder(row, 'fitted') === null || isYes(row, 'fitted'),
        ohm: elementOhm(row, kind, builder),
        coldOhm: quantity(row, 'cold', 'ohm', builder),
        watts: quantity(row, 'power', 'W', builder),
        volts: quantity(row, 'volts', 'V', builder),
        dropVolts: quantity(row, 'drop', 'V', builder),
        ratingAmps: quantity(row, 'rating', 'A', builder),
        leastAmps: quantity(row, 'least', 'A', builder),
        mostAmps: quantity(row, 'most', 'A', builder),
        critical: isYes(row, 'critical'),
        unlitVolts:
          quantity(row, 'unlit below', 'V', builder) ??
          quantityUnder(electrical, 'unlit below', 'V', builder.complaints),
        workedBy: -1,
        restClosed: textUnder(row, 'rest')?.text === 'closed',
      });
      const coil = textUnder(row, 'worked by');
      if (coil !== null) builder.worked.push({ element: builder.elements.length - 1, coil });
    }
  }
}

const elementKinds: ReadonlyMap<string, DeviceElement['kind']> = new Map(
  (['switch', 'diode', 'fuse', 'bridge', 'coil', 'drive'] as const).map((kind) => [kind, kind]),
);

function elementKind(text: string | undefined): DeviceElement['kind'] {
  return elementKinds.get(text ?? '') ?? 'load';
}

/** Finds the coil of each worked switch, once all elements have names. */
function readWorked(builder: HarnessBuilder): void {
  for (const { element, coil } of builder.worked) {
    const found = builder.elementByName.get(coil.text) ?? -1;
    const one = builder.elements[element];
    if (builder.elements[found]?.kind !== 'coil') {
      const coils = builder.elements.filter(({ kind }) => kind === 'coil').map(({ name }) => name);
      builder.complaints.unknown('coil', coil.text, coil.span, coils);
    } else if (one !== undefined) builder.elements[element] = { ...one, workedBy: found };
  }
}

function readSupplies(section: Located | null, builder: HarnessBuilder): void {
  for (const entry of rowsUnder(section, 'supplies')) {
    const places: number[] = [];
    for (const one of textsUnder(entry.value, 'at')) {
      const place = builder.placeByAddress.get(one.text);
      if (place === undefined) builder.unknownPlace('place', one.text, one.span);
      else places.push(place);
    }
    const back = textUnder(entry.value, 'return');
    const returnPlace = back === null ? -1 : builder.placeByAddress.get(back.text);
    if (returnPlace === undefined)
      builder.complaints.unknown(
        'place',
        back?.text ?? '',
        back?.span ?? null,
        builder.placeByAddress.keys(),
      );
    builder.supplies.push({
      name: entry.key,
      places,
      returnPlace: returnPlace ?? -1,
      volts: quantity(entry.value, 'volts', 'V', builder),
      ohm: quantity(entry.value, 'resistance', 'ohm', builder),
    });
  }
}

function sourceOf(text: string | undefined): SourceClass {
  return text === 'always' || text === 'switched' || text === 'driven' || text === 'never' ? text : 'unknown';
}

function lockOf(row: Located, key: string): 'closed' | 'open' | 'none' {
  const text = textUnder(row, key)?.text;
  return text === 'closed' || text === 'open' ? text : 'none';
}

/** The face of a connector, checked against its own list of labels. */
function readFaceOf(row: Located, labels: readonly string[], builder: HarnessBuilder): Face | null {
  const node = entryOf(row, 'face');
  if (node === null) return null;
  const form = faceSchema.safeParse(plainOf(node));
  // The schema of the whole file has complained of a wrong form already.
  if (!form.success) return null;
  const reading = readFace(form.data, labels);
  for (const problem of reading.problems) builder.complaints.error('face', problem, node.span);
  return reading.value;
}

/** The resistance of an element; a load or coil without any would be a join, and its current no number. */
function elementOhm(row: Located, kind: string | undefined, builder: HarnessBuilder): number | null {
  const ohm = quantity(row, 'resistance', 'ohm', builder);
  if (ohm !== 0 || (kind !== 'load' && kind !== 'coil')) return ohm;
  builder.complaints.error(
    'quantity',
    `a ${kind} cannot have a resistance of 0 ohm`,
    entryOf(row, 'resistance')?.span ?? row.span,
    'what has none is a wire, or leave it away where it is not known',
  );
  return null;
}

function quantity(row: Located, key: string, unit: QuantityUnit, builder: HarnessBuilder): number | null {
  return quantityUnder(row, key, unit, builder.complaints);
}
