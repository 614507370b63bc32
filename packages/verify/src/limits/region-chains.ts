import type { CircuitRegion } from './circuit-region.ts';

/** A branch of a chain. */
export interface ChainLink {
  readonly branch: number;
  /** 1 where the branch leads along the chain, -1 where it leads against it. */
  readonly sign: 1 | -1;
  /** The node behind it, seen from the beginning of the chain. */
  readonly node: number;
}

/** Branches one behind the other with nothing else between them: one current flows through all. */
export interface RegionChain {
  readonly from: number;
  readonly to: number;
  readonly links: readonly ChainLink[];
  /** The link that is a load or a diode, or -1; a chain has one at most. */
  readonly special: number;
}

/**
 * Sorts the branches of a region into chains, each branch into exactly one. What a state asks of a network is then
 * answered by one element a chain, which is what makes thousands of states affordable.
 */
export function regionChains(
  region: Pick<CircuitRegion, 'branches' | 'branchesAt' | 'poles'>,
): readonly RegionChain[] {
  const { branches, branchesAt, poles } = region;
  const done = new Uint8Array(branches.length);
  const isSpecial = (index: number): boolean => {
    const kind = branches[index]?.kind;
    return kind === 'load' || kind === 'diode';
  };
  let hasSpecial = false;
  /** Takes branches from a node on, as long as there is one way only. */
  const follow = (start: number, last: number): readonly ChainLink[] => {
    const links: ChainLink[] = [];
    let [node, by] = [start, last];
    for (;;) {
      const here = branchesAt.get(node) ?? [];
      if (poles.has(node) || here.length !== 2) return links;
      const next = here[0] === by ? here[1] : here[0];
      const branch = branches[next ?? -1];
      if (next === undefined || branch === undefined || done[next] === 1) return links;
      if (isSpecial(next)) {
        if (hasSpecial) return links;
        hasSpecial = true;
      }
      done[next] = 1;
      const sign = branch.from === node ? 1 : -1;
      node = sign === 1 ? branch.to : branch.from;
      by = next;
      links.push({ branch: next, sign, node });
    }
  };
  const chains: RegionChain[] = [];
  for (const [index, { from, to }] of branches.entries()) {
    if (done[index] === 1) continue;
    done[index] = 1;
    hasSpecial = isSpecial(index);
    const onward = follow(to, index);
    const back = follow(from, index);
    // What was followed backwards is turned, so that the chain runs one way.
    const turned = back
      .map(
        ({ branch, sign }, at): ChainLink => ({
          branch,
          sign: sign === 1 ? -1 : 1,
          node: back[at - 1]?.node ?? from,
        }),
      )
      .reverse();
    const links: readonly ChainLink[] = [...turned, { branch: index, sign: 1, node: to }, ...onward];
    chains.push({
      from: back[back.length - 1]?.node ?? from,
      to: onward[onward.length - 1]?.node ?? to,
      links,
      special: links.findIndex(({ branch }) => isSpecial(branch)),
    });
  }
  return chains;
}
