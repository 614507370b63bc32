import type { Made, PathHop } from '@loomproof/verify';

/**
 * A path as lines that a finger can follow: the places and joints it passes, each alone in a line, and between them
 * what leads from one to the next, with colour and size and the step that made each join.
 *
 * Wire ends and terminals on the way are not lines of their own: what a person sees is the wire. Names of places and
 * joints hold no `@`, names of ends and terminals always do.
 *
 * @param path - hops, each beginning where the one before ends
 * @returns lines without indent, none for an empty path
 */
export function pathLines(path: readonly PathHop[]): readonly string[] {
  const lines: string[] = [];
  let stretch: PathHop[] = [];
  for (const [index, hop] of path.entries()) {
    if (stretch.length === 0 && path[index - 1]?.to !== hop.from) lines.push(hop.from);
    stretch.push(hop);
    const next = path[index + 1];
    if (next !== undefined && next.from === hop.to && hop.to.includes('@')) continue;
    lines.push(`  | ${stretchText(stretch)}`, hop.to);
    stretch = [];
  }
  return lines;
}

function stretchText(hops: readonly PathHop[]): string {
  const wires = hops.filter((hop) => hop.by === 'conductor');
  const others = hops.filter((hop) => hop.by !== 'conductor');
  const joins = others.filter((hop) => wires.length === 0 || typeof hop.made === 'number');
  return [...wires.map(wireText), ...joins.map(joinText)].join('; ');
}

function wireText({ name, colour, size, made }: PathHop): string {
  const what = [`wire ${name ?? '?'}`, colour, size].filter((one) => one !== null).join(', ');
  return `${what}, ${sinceText(made)}`;
}

function joinText({ by, from, to, name, made }: PathHop): string {
  const since = sinceText(made);
  switch (by) {
    case 'seat':
      return `in ${from.includes('@') ? to : from}, ${since}`;
    case 'crimp':
      return `crimped, ${since}`;
    case 'joint':
      return `joined in ${from.includes('@') ? to : from}, ${since}`;
    case 'mate':
      return `plugged together, ${since}`;
    case 'jumper':
      return `jumper ${name ?? ''}, ${since}`;
    case 'element':
      return `through ${name ?? 'what is inside'}`;
    case 'chassis':
      return 'through the chassis';
    default:
      return since;
  }
}

/** Where a join comes from, in words. */
function sinceText(made: Made): string {
  if (typeof made === 'number') return `step ${made}`;
  return made === 'stock' ? 'as found' : 'from the kit';
}
