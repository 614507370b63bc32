import {
  formatColour,
  formatSize,
  grouped,
  positionAt,
  type Rework,
  type Span,
  sameColour,
  UnionFind,
} from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';
import type { Names } from './names.ts';

/**
 * The pin table as drawn after the work is a second witness: rework(before) and the drawing must have the same nets,
 * sizes and colours. Nets are compared without mates, because a pin table shows one harness by itself.
 */
export function judgeDrawing(rework: Rework, names: Names): readonly RawFinding[] {
  const { job, graph } = rework;
  const rows = job.wanted.drawn;
  if (rows === null) return [];
  const findings: RawFinding[] = [];
  const drawn = new UnionFind(job.nodeCount);
  const mentioned = new Set<number>();
  for (const row of rows) {
    drawn.union(row.from, row.to);
    for (const node of [row.from, row.to]) if (node < job.places.length) mentioned.add(node);
  }
  const copper = rework.labels(rework.ordinal, (edge) => graph.kindOf(edge) !== 'mate');
  const count = new Map<number, number>();
  for (const label of copper) count.set(label, (count.get(label) ?? 0) + 1);
  for (const [place] of job.places.entries())
    if ((count.get(copper[place] as number) ?? 0) > 1) mentioned.add(place);
  const drawnLabels = drawn.labels(job.places.length);
  const places = [...mentioned].sort((a, b) => a - b);
  const mixed = new UnionFind(job.places.length * 2);
  for (const place of places)
    mixed.union(drawnLabels[place] as number, job.places.length + (copper[place] as number));
  for (const members of grouped(places, (place) => mixed.find(drawnLabels[place] as number)).values()) {
    const [first] = members;
    const agree = members.every(
      (place) => drawnLabels[place] === drawnLabels[first ?? 0] && copper[place] === copper[first ?? 0],
    );
    if (agree) continue;
    const row = rows.find((one) => members.includes(one.from) || members.includes(one.to));
    const step = lastStepOn(rework, members);
    const show = (labels: Int32Array): string =>
      [...grouped(members, (place) => labels[place] as number).values()]
        .map((one) => one.map((place) => names.place(place)).join(' + '))
        .join(' | ');
    findings.push({
      kind: 'drawing-differs',
      step,
      points: members.map((place) => names.place(place)),
      witness: {
        is: 'drawing',
        row: row?.wire ?? '',
        line: lineOf(row?.span ?? null),
        drawn: show(drawnLabels),
        found: show(copper),
      },
      culprits: step === null ? [] : [step],
      keys: members.map((place) => `node:${place}`),
    });
  }
  const wires = new Map(job.wires.map((wire, index) => [wire.name, index]));
  for (const row of rows) {
    const wire = job.wires[wires.get(row.wire) ?? -1];
    if (wire === undefined) continue;
    const wrong: [string, string, string][] = [];
    if (row.size !== null && wire.size !== null && Math.abs(row.size.mm2 - wire.size.mm2) > 1e-9)
      wrong.push(['size', formatSize(row.size), formatSize(wire.size)]);
    if (row.colour !== null && wire.colour !== null && !sameColour(row.colour, wire.colour))
      wrong.push(['colour', formatColour(row.colour), formatColour(wire.colour)]);
    for (const [what, asDrawn, found] of wrong) {
      findings.push({
        kind: 'drawing-differs',
        step: null,
        points: [row.wire],
        witness: {
          is: 'drawing',
          row: row.wire,
          line: lineOf(row.span),
          drawn: `${what} ${asDrawn}`,
          found: `${what} ${found}`,
        },
        culprits: [],
        keys: [`drawn:${row.wire}:${what}`],
      });
    }
  }
  return findings;
}

function lineOf(span: Span | null): number | null {
  return span === null ? null : positionAt(span.source, span.start).line;
}

function lastStepOn(rework: Rework, places: readonly number[]): number | null {
  let last: number | null = null;
  for (const { action, number } of rework.job.steps) {
    if ('place' in action && typeof action.place === 'number' && places.includes(action.place)) last = number;
  }
  return last;
}
