import type {
  Agreement,
  Deviation,
  StatedAddition,
  StatedCircuit,
  StatedStub,
  Wanted,
} from '../harness/job.ts';
import type { Located, LocatedText } from '../kit/located.ts';
import { entryOf, itemsUnder, rowsUnder, textsUnder, textUnder } from '../kit/located.ts';
import { textOr } from './complaints.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { connectorOf, placeOf } from './read-steps.ts';

/** Reads what the designer wants of one variant. */
export function readWanted(
  document: Located,
  stockWires: ReadonlyMap<string, number>,
  builder: HarnessBuilder,
): Omit<Wanted, 'drawn' | 'powered' | 'mayTie'> {
  const section = entryOf(document, 'wanted');
  const { complaints } = builder;
  const places = (nodes: readonly LocatedText[]): number[] =>
    nodes.map((node) => placeOf(node, builder)).filter((place) => place !== null);
  const wireOf = (node: LocatedText | null): number | null => {
    const wire = stockWires.get(node?.text ?? '');
    if (wire === undefined)
      complaints.unknown('wire', node?.text ?? '', node?.span ?? null, stockWires.keys());
    return wire ?? null;
  };
  const circuits: StatedCircuit[] = rowsUnder(section, 'circuits').map(({ key, keySpan, value }) => ({
    name: key,
    places: places(
      value.kind === 'list'
        ? value.items.filter((one): one is LocatedText => one.kind === 'text')
        : textsUnder(value, 'joins'),
    ),
    span: keySpan,
  }));
  const additions: StatedAddition[] = rowsUnder(section, 'additions').flatMap(({ key, keySpan, value }) => {
    const to = placeOf(textUnder(value, 'to'), builder);
    const add = places(textsUnder(value, 'add'));
    const take = places(textsUnder(value, 'take'));
    if (add.length + take.length === 0)
      complaints.error('addition', `addition \`${key}\` adds and takes nothing`, keySpan);
    return to === null ? [] : [{ name: key, to, add, take, span: keySpan }];
  });
  const names = new Set(circuits.map((one) => one.name));
  for (const one of additions)
    if (names.has(one.name))
      complaints.error('written-twice', `\`${one.name}\` names a circuit and an addition`, one.span);
  const moves = itemsUnder(section, 'moves').flatMap((row) => {
    const from = placeOf(textUnder(row, 'from'), builder);
    const to = placeOf(textUnder(row, 'to'), builder);
    return from === null || to === null ? [] : [{ from, to, span: row.span }];
  });
  const retiredWires = new Set<number>();
  const retiredPlaces = new Set<number>();
  for (const row of itemsUnder(section, 'retired')) {
    if (entryOf(row, 'wire') !== null) {
      const wire = wireOf(textUnder(row, 'wire'));
      if (wire !== null) retiredWires.add(wire);
    } else {
      const place = placeOf(textUnder(row, 'cavity'), builder);
      if (place !== null) retiredPlaces.add(place);
    }
  }
  const stubs: StatedStub[] = itemsUnder(section, 'stubs').flatMap((row) => {
    const wire = wireOf(textUnder(row, 'of'));
    const place = placeOf(textUnder(row, 'at'), builder);
    return wire === null || place === null
      ? []
      : [{ wire, place, live: textUnder(row, 'is')?.text === 'live', span: row.span }];
  });
  const apart = itemsUnder(section, 'apart').map((row) => ({
    places: places(
      row.kind === 'list' ? row.items.filter((one): one is LocatedText => one.kind === 'text') : [],
    ),
    span: row.span,
  }));
  const leftUnplugged = new Set(
    textsUnder(section, 'left unplugged')
      .map((node) => connectorOf(node, builder))
      .filter((one) => one !== null),
  );
  const interposed = itemsUnder(section, 'interposed').flatMap((row) => {
    const connector = connectorOf(textUnder(row, 'at'), builder);
    const near = connectorOf(textUnder(row, 'near'), builder);
    const far = connectorOf(textUnder(row, 'far'), builder);
    return connector === null || near === null || far === null ? [] : [{ connector, near, far }];
  });
  const deviations: Deviation[] = itemsUnder(section, 'deviations').map((row) => ({
    allows: textUnder(row, 'allows')?.text ?? '',
    at: textUnder(row, 'at')?.text ?? null,
    by: textUnder(row, 'by')?.text ?? '',
    why: textUnder(row, 'why')?.text ?? '',
    span: row.span,
  }));
  const changed = { wires: new Set<number>(), places: new Set<number>(), elements: new Set<number>() };
  for (const node of textsUnder(section, 'changed')) {
    const wire = stockWires.get(node.text);
    const place = builder.placeByAddress.get(node.text);
    const element = builder.elementByName.get(node.text);
    if (wire !== undefined) changed.wires.add(wire);
    if (place !== undefined) changed.places.add(place);
    if (element !== undefined) changed.elements.add(element);
    if (wire === undefined && place === undefined && element === undefined) {
      complaints.unknown('wire, cavity or fuse', node.text, node.span, [
        ...stockWires.keys(),
        ...builder.placeByAddress.keys(),
        ...builder.elementByName.keys(),
      ]);
    }
  }
  const agreeRow = entryOf(section, 'agree');
  const between = textsUnder(agreeRow, 'between');
  const agree: Agreement | null =
    agreeRow === null
      ? null
      : {
          axis: textUnder(agreeRow, 'axis')?.text ?? '',
          between: [between[0]?.text ?? '', between[1]?.text ?? ''],
          pairs: new Map(rowsUnder(agreeRow, 'pairs').map(({ key, value }) => [key, textOr(value)])),
          differ: textsUnder(agreeRow, 'differ').map((node) => node.text),
          span: agreeRow.span,
        };
  if (
    circuits.length +
      additions.length +
      moves.length +
      retiredWires.size +
      retiredPlaces.size +
      stubs.length +
      interposed.length ===
      0 &&
    !complaints.failed
  ) {
    complaints.error(
      'nothing-wanted',
      'nothing is asked of this kit, so nothing can be proved',
      section?.span ?? document.span,
      'state circuits, additions, moves or retired wires under `wanted`',
    );
  }
  return {
    circuits,
    additions,
    moves,
    retiredWires,
    retiredPlaces,
    stubs,
    apart,
    leftUnplugged,
    interposed,
    deviations,
    changed,
    agree,
  };
}
