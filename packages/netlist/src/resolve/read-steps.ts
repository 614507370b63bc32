import type { Step, StepAction, Zone } from '../harness/job.ts';
import { stepNumberKey } from '../kit/choose-variant.ts';
import type { Located, LocatedMap, LocatedText } from '../kit/located.ts';
import { itemsUnder, textsUnder, textUnder } from '../kit/located.ts';
import type { HarnessBuilder } from './harness-builder.ts';
import { zoneUnder } from './read-parts.ts';
import { partUnder } from './read-wires.ts';
import { StepScope } from './step-scope.ts';

/** Reads the rework steps of one variant with every name resolved against what is there at that moment. */
export function readSteps(
  document: Located,
  builder: HarnessBuilder,
): { readonly steps: readonly Step[]; readonly scope: StepScope } {
  const scope = new StepScope(builder);
  const steps: Step[] = [];
  for (const row of itemsUnder(document, 'work')) {
    if (row.kind !== 'map') continue;
    const action = readAction(row, scope, builder);
    if (action === null) {
      // What this step would have named is not missing, it is spoiled here.
      scope.fail([...textsUnder(row, 'leaves'), ...textsUnder(row, 'as')].map((node) => node.text));
      continue;
    }
    steps.push({
      number: Number(textUnder(row, stepNumberKey)?.text ?? 0),
      action,
      note: textUnder(row, 'note')?.text ?? null,
      caution: textUnder(row, 'caution')?.text ?? null,
      hold: textUnder(row, 'hold')?.text ?? null,
      span: row.span,
    });
  }
  return { steps, scope };
}

/** The place of an address, or null with a complaint. */
export function placeOf(node: LocatedText | null, builder: HarnessBuilder): number | null {
  if (node === null) return null;
  const place = builder.placeByAddress.get(node.text);
  if (place !== undefined) return place;
  builder.unknownPlace('place', node.text, node.span);
  return null;
}

/** The connector of a name, or null with a complaint. */
export function connectorOf(node: LocatedText | null, builder: HarnessBuilder): number | null {
  if (node === null) return null;
  const connector = builder.connectorByName.get(node.text);
  if (connector !== undefined) return connector;
  builder.complaints.unknown('connector', node.text, node.span, builder.connectorByName.keys());
  return null;
}

function readAction(row: LocatedMap, scope: StepScope, builder: HarnessBuilder): StepAction | null {
  const kind = textUnder(row, 'do')?.text ?? '';
  const { complaints } = builder;
  const part = (key: string, is: string): string | null => partUnder(row, key, is, builder)?.text ?? null;
  const optionalPart = (key: string): string | null => {
    const node = textUnder(row, key);
    if (node !== null && !builder.parts.has(node.text))
      complaints.unknown('part', node.text, node.span, builder.parts.keys());
    return node?.text ?? null;
  };
  const joint = (key: string): number | null => {
    const node = textUnder(row, key);
    const found = builder.jointByName.get(node?.text ?? '');
    if (found === undefined && !scope.hasFailed(node?.text ?? ''))
      complaints.unknown(
        'splice, tap or jumper',
        node?.text ?? '',
        node?.span ?? row.span,
        builder.jointByName.keys(),
      );
    return found ?? null;
  };
  switch (kind) {
    case 'disconnect':
    case 'reconnect': {
      const node = textUnder(row, 'supply');
      const supply = builder.supplies.findIndex((one) => one.name === node?.text);
      if (supply < 0)
        complaints.unknown(
          'supply',
          node?.text ?? '',
          node?.span ?? row.span,
          builder.supplies.map((one) => one.name),
        );
      return supply < 0 ? null : { kind, supply };
    }
    case 'prove dead': {
      const place = placeOf(textUnder(row, 'at'), builder);
      return place === null ? null : { kind, place };
    }
    case 'unplug':
    case 'plug':
    case 'open lock':
    case 'close lock':
    case 'open latch':
    case 'close latch': {
      const connector = connectorOf(textUnder(row, 'connector'), builder);
      return connector === null ? null : { kind, connector };
    }
    case 'cut': {
      const mark = scope.mark(textUnder(row, 'wire'), textUnder(row, 'at'));
      const [first, second] = textsUnder(row, 'leaves');
      if (mark === null || first === undefined || second === undefined) return null;
      const zone = zoneHere(row, builder.pieces[mark.piece]?.wire ?? -1, builder);
      const left = scope.cut(mark, [first, second]);
      return left === null
        ? null
        : { kind, piece: mark.piece, after: left.after, leaves: left.pieces, newEnds: left.ends, zone };
    }
    case 'strip':
    case 'remove seal':
    case 'detach': {
      const end = scope.end(textUnder(row, 'end'));
      return end === null ? null : { kind, end };
    }
    case 'slide tube':
    case 'fit seal': {
      const end = scope.end(textUnder(row, 'end'));
      const name = part('with', kind === 'fit seal' ? 'seal' : 'tube');
      return end === null || name === null ? null : { kind, end, part: name };
    }
    case 'join': {
      const ends = textsUnder(row, 'ends').map((node) => scope.end(node));
      const name = part('with', 'splice');
      const index = newJoint(row, 'splice', name, zoneUnder(row), builder);
      if (name === null || index === null || ends.some((end) => end === null)) return null;
      return { kind, ends: ends.filter((end) => end !== null), joint: index };
    }
    case 'seal': {
      const index = joint('joint');
      return index === null ? null : { kind, joint: index };
    }
    case 'tap': {
      const mark = scope.mark(textUnder(row, 'run'), textUnder(row, 'at'));
      const branch = scope.end(textUnder(row, 'branch'));
      const name = part('with', 'tap');
      const zone =
        mark === null ? zoneUnder(row) : zoneHere(row, builder.pieces[mark.piece]?.wire ?? -1, builder);
      const index = newJoint(row, 'tap', name, zone, builder);
      if (mark === null || branch === null || name === null || index === null) return null;
      scope.tapped(mark, builder.joints[index]?.name ?? '');
      return { kind, piece: mark.piece, after: mark.after, branch, joint: index };
    }
    case 'remove tap': {
      const index = joint('tap');
      if (index === null) return null;
      if (builder.joints[index]?.kind === 'tap') return { kind, joint: index };
      complaints.error('joint-kind', `\`${builder.joints[index]?.name ?? ''}\` is no tap`, row.span);
      return null;
    }
    case 'fit terminal': {
      const ends = textsUnder(row, 'ends').map((node) => scope.end(node));
      const name = part('with', 'terminal');
      const seal = textUnder(row, 'seal') === null ? null : part('seal', 'seal');
      if (name === null || ends.some((end) => end === null)) return null;
      return {
        kind,
        ends: ends.filter((end) => end !== null),
        terminal: builder.addTerminal(name, -1),
        seal,
      };
    }
    case 'withdraw':
    case 'remove plug': {
      const place = cavityOf(textUnder(row, 'cavity'), builder);
      return place === null ? null : { kind, place };
    }
    case 'insert': {
      const end = scope.end(textUnder(row, 'end'));
      const place = cavityOf(textUnder(row, 'cavity'), builder);
      return end === null || place === null ? null : { kind, end, place };
    }
    case 'attach': {
      const end = scope.end(textUnder(row, 'end'));
      const node = textUnder(row, 'stud');
      const place = placeOf(node, builder);
      if (place !== null && builder.places[place]?.kind !== 'stud') {
        complaints.error(
          'place-kind',
          `\`${node?.text ?? ''}\` is no stud`,
          node?.span ?? null,
          'use `insert` for a cavity',
        );
        return null;
      }
      return end === null || place === null ? null : { kind, end, place };
    }
    case 'cover': {
      const node = textUnder(row, 'end');
      const name = optionalPart('with');
      const found = builder.jointByName.get(node?.text ?? '');
      const end = found === undefined ? scope.end(node) : -1;
      if (end === null || name === null) return null;
      return { kind, end, joint: found ?? -1, part: name };
    }
    case 'tie back': {
      const end = scope.end(textUnder(row, 'end'));
      return end === null ? null : { kind, end, part: optionalPart('with') };
    }
    case 'fasten': {
      const piece = scope.piece(textUnder(row, 'wire'));
      return piece === null ? null : { kind, piece, part: optionalPart('with') };
    }
    case 'fit plug': {
      const place = cavityOf(textUnder(row, 'cavity'), builder);
      const name = part('with', 'plug');
      return place === null || name === null ? null : { kind, place, part: name };
    }
    case 'fit fuse':
    case 'remove fuse': {
      const node = textUnder(row, 'fuse');
      const element = builder.elementByName.get(node?.text ?? '') ?? -1;
      if (builder.elements[element]?.kind !== 'fuse') {
        const fuses = builder.elements.filter((one) => one.kind === 'fuse').map((one) => one.name);
        complaints.unknown('fuse', node?.text ?? '', node?.span ?? row.span, fuses);
        return null;
      }
      if (kind === 'remove fuse') return { kind, element };
      const name = part('with', 'fuse');
      return name === null ? null : { kind, element, part: name };
    }
    case 'place': {
      const connector = connectorOf(textUnder(row, 'device'), builder);
      return connector === null ? null : { kind, connector };
    }
    case 'interpose': {
      const connector = connectorOf(textUnder(row, 'at'), builder);
      const near = connectorOf(textUnder(row, 'near'), builder);
      const far = connectorOf(textUnder(row, 'far'), builder);
      return connector === null || near === null || far === null ? null : { kind, connector, near, far };
    }
    case 'fit jumper': {
      const [a, b] = textsUnder(row, 'between');
      const places = [placeOf(a ?? null, builder), placeOf(b ?? null, builder)];
      const index = newJoint(row, 'jumper', null, 'unknown', builder);
      const [first, second] = places;
      if (index === null || first === null || first === undefined || second === null || second === undefined)
        return null;
      return { kind, joint: index, places: [first, second], part: optionalPart('with') };
    }
    case 'remove jumper': {
      const index = joint('jumper');
      return index === null ? null : { kind, joint: index };
    }
    case 'remove off-cut': {
      const piece = scope.piece(textUnder(row, 'wire'));
      return piece === null ? null : { kind, piece };
    }
    default:
      return null;
  }
}

function cavityOf(node: LocatedText | null, builder: HarnessBuilder): number | null {
  const place = placeOf(node, builder);
  if (place === null || builder.places[place]?.kind === 'cavity') return place;
  builder.complaints.error(
    'place-kind',
    `\`${node?.text ?? ''}\` is no cavity`,
    node?.span ?? null,
    'use `attach` or `detach` for a stud',
  );
  return null;
}

function zoneHere(row: Located, wire: number, builder: HarnessBuilder): Zone {
  const said = zoneUnder(row);
  return said === 'unknown' ? (builder.wires[wire]?.zone ?? 'unknown') : said;
}

function newJoint(
  row: Located,
  kind: 'splice' | 'tap' | 'jumper',
  part: string | null,
  zone: Zone,
  builder: HarnessBuilder,
): number | null {
  const node = textUnder(row, 'as');
  if (node === null) return null;
  if (
    builder.jointByName.has(node.text) ||
    builder.placeByAddress.has(node.text) ||
    /[:@=|]/.test(node.text)
  ) {
    builder.complaints.error(
      'written-twice',
      `\`${node.text}\` cannot name this ${kind}`,
      node.span,
      'give it a name that nothing else has',
    );
    return null;
  }
  return builder.addJoint({ name: node.text, kind, part, origin: 'kit', zone, before: 'absent' });
}
