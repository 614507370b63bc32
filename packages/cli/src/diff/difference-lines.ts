import type { ConductorRow } from '@loomproof/netlist';
import type { ConductorChange, HarnessDifference, NetChange } from '@loomproof/verify';
import { countText } from '../output/count-text.ts';
import { listText } from '../output/list-text.ts';

const mostShown = 40;

/**
 * What is different between two harnesses, most important first: nets, then cavities, then conductors.
 *
 * @param difference - of two harnesses that are not equal
 * @returns lines without indent
 */
export function differenceLines(difference: HarnessDifference): readonly string[] {
  const { nets, gained, lost, added, removed, changed } = difference;
  const kept = nets.filter((one) => one.is === 'kept').length;
  return [
    `${countText(kept, 'net')} kept, ${nets.length - kept} not`,
    ...cut(nets.flatMap(netLine)),
    ...(gained.length === 0 ? [] : [`cavities gained: ${listText(gained, mostShown)}`]),
    ...(lost.length === 0 ? [] : [`cavities lost: ${listText(lost, mostShown)}`]),
    ...cut(removed.map((row) => `wire gone: ${rowText(row)}`)),
    ...cut(added.map((row) => `wire new: ${rowText(row)}`)),
    ...cut(changed.map(changeLine)),
  ];
}

function cut(lines: readonly string[]): readonly string[] {
  if (lines.length <= mostShown) return lines;
  return [...lines.slice(0, mostShown), `and ${lines.length - mostShown} more such; --json gives all`];
}

function netLine(net: NetChange): readonly string[] {
  const net1 = (places: readonly string[]): string => listText(places, mostShown);
  const nets = (lists: readonly (readonly string[])[]): string => lists.map(net1).join(' | ');
  switch (net.is) {
    case 'kept':
      return [];
    case 'split':
      return [`net split: ${net1(net.places)}  into  ${nets(net.into)}`];
    case 'merged':
      return [`nets merged: ${nets(net.from)}  into  ${net1(net.places)}`];
    case 'rearranged':
      return [`nets rearranged: ${nets(net.from)}  into  ${nets(net.into)}`];
    case 'resized':
      return [
        `net of ${net1(net.places)}:${net.gained.length === 0 ? '' : ` gained ${net1(net.gained)}`}${
          net.lost.length === 0 ? '' : ` lost ${net1(net.lost)}`
        }`,
      ];
    case 'gone':
      return [`net gone: ${net1(net.places)}`];
    case 'new':
      return [`net new: ${net1(net.places)}`];
    default: {
      const unknown: never = net;
      return unknown;
    }
  }
}

function rowText({ wire, from, to, size, colour }: ConductorRow): string {
  const attributes = [colour, size].filter((one) => one !== null).join(', ');
  return `${wire}, ${from} to ${to}${attributes === '' ? '' : `, ${attributes}`}`;
}

function changeLine({ wire, what, before, after }: ConductorChange): string {
  const [old, now] = [before ?? 'not said', after ?? 'not said'];
  const isEnd = what === 'from' || what === 'to';
  return isEnd ? `wire ${wire} moved: ${old} to ${now}` : `wire ${wire}: ${what} ${old}, now ${now}`;
}
