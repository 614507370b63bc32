import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { electricalRatios, proofSeconds } from './electrical.ts';
import { checklistFigures, faultFigures, longestChecklistSeconds } from './faults.ts';
import { type Measured, measure, ratio } from './measure.ts';
import { measureHeap } from './measure-heap.ts';
import { processRatio } from './process-ratio.ts';
import { sheetsFigure } from './sheets.ts';

/** One line of the table: what was measured, how it did, and what is wanted of it. */
interface Row {
  readonly what: string;
  readonly found: string;
  readonly wanted: string;
}

const root = fileURLToPath(new URL('../', import.meta.url));
const document = `${root}docs/performance.md`;
const [begin, end] = ['<!-- bench begins -->', '<!-- bench ends -->'];

async function netRows(size: number, rounds: number): Promise<readonly Row[]> {
  const names = ['nets', 'nets by graphlib', 'nets by graphology', 'unions', 'bare unions'];
  const groups = names.map((name): readonly Measured[] => [{ name, size }]);
  const times = await measure(groups, rounds, 1);
  const [own, graphlib, graphology, unions, bare] = times;
  for (const other of [graphlib, graphology]) {
    if (other?.digest !== own?.digest) throw new Error(`the libraries find other nets at ${size} wires`);
  }
  const wires = size.toLocaleString('en');
  return [
    {
      what: `graphlib, build and components, over our nets, ${wires} wires`,
      found: shown(ratio(graphlib, own)),
      wanted: 'at least 20',
    },
    {
      what: `graphology over our nets, ${wires} wires`,
      found: shown(ratio(graphology, own)),
      wanted: 'at least 8',
    },
    {
      what: `our unions over a bare loop, ${wires} wires`,
      found: shown(ratio(unions, bare)),
      wanted: 'at most 2',
    },
  ];
}

/**
 * The proof of 5,000 wires falls from some 60 ms to 9 in its first rounds, while V8 compiles it, and later where the machine
 * is busy. With fewer rounds before those that count, its ratios told how far V8 had come: 2.2 on one day, 6.9 on another.
 */
const warmUpOfProof = 8;

async function proofRows(): Promise<readonly Row[]> {
  const [small, large] = [5_000, 50_000];
  const [nets, proof, tenfold, tenfoldWork] = await measure(
    [
      [
        { name: 'nets of the kit', size: small },
        { name: 'proof', size: small },
      ],
      [{ name: 'proof', size: large }],
      [{ name: 'proof in proportion', size: large }],
    ],
    7,
    warmUpOfProof,
  );
  return [
    {
      what: 'proof of 5,000 wires and 200 steps over its own net extraction',
      found: shown(ratio(proof, nets)),
      wanted: 'at most 8',
    },
    {
      what: 'proof of 50,000 wires and 200 steps over that of 5,000, time',
      found: shown(ratio(tenfold, proof)),
      wanted: 'at most 12',
    },
    {
      what: 'proof of 50,000 wires and 2,000 steps over that of 5,000 and 200, time',
      found: shown(ratio(tenfoldWork, proof)),
      wanted: 'none stated: ten times the work too',
    },
  ];
}

async function heapRows(): Promise<readonly Row[]> {
  const small = await measureHeap({ name: 'proof', size: 5_000 });
  const rows: Row[] = [];
  for (const [name, steps] of [
    ['proof', 200],
    ['proof in proportion', 2_000],
  ] as const) {
    const large = await measureHeap({ name, size: 50_000 });
    const what = `proof of 50,000 wires and ${steps.toLocaleString('en')} steps over that of 5,000 and 200`;
    rows.push(
      {
        what: `${what}, heap that the verdict holds`,
        found: shown(large.retained / small.retained),
        wanted: 'at most 12',
      },
      {
        what: `${what}, heap allocated in all`,
        found: shown(large.allocated / small.allocated),
        wanted: 'at most 12',
      },
    );
  }
  return rows;
}

/** How much of the electrical judgements an untouched harness costs. */
function electricalRows(): readonly Row[] {
  const { losses, protection, backFeed } = electricalRatios(100, 5_000, 9);
  const what = 'a kit in a harness of 5,000 untouched wires over the same kit in one of 100';
  const twelve = { rungs: 12, limits: true } as const;
  const exactly = 'proof of one part of 12 switches, exactly, losses too';
  return [
    {
      what: `${exactly}, processor seconds`,
      found: shown(proofSeconds({ ...twelve, returns: 'ground' })),
      wanted: 'at most 10',
    },
    {
      what: `${exactly} and with each of eleven returns open, processor seconds`,
      found: shown(proofSeconds({ ...twelve, returns: 'in a row' })),
      wanted: 'at most 10',
    },
    {
      what: 'proof of one part of 20 switches, exactly, without open returns, processor seconds',
      found: shown(proofSeconds({ rungs: 20, returns: 'ground' })),
      wanted: 'at most 60',
    },
    {
      what: `losses of ${what}`,
      found: shown(losses),
      wanted: 'at most 2',
    },
    {
      what: `search for back-feed of ${what}`,
      found: shown(backFeed),
      wanted: 'at most 2',
    },
    {
      what: `every conductor against its fuse, ${what}, which holds 50 times as many conductors`,
      found: shown(protection),
      wanted: 'at most 150',
    },
  ];
}

function faultRows(): readonly Row[] {
  return [0, 1_500].map((ground) => {
    const { faults, localMs, anewMs } = faultFigures(5_000, ground);
    const net = ground === 0 ? '' : `, ${ground.toLocaleString('en')} wires on one ground net`;
    return {
      what: `${faults.toLocaleString('en')} single faults on 5,000 wires${net}: nets anew over the local way`,
      found: shown(anewMs / localMs),
      wanted: ground === 0 ? 'at least 200' : 'at least 50',
    };
  });
}

function checklistRows(): readonly Row[] {
  const { reworkedPlaces, faults, short, bound, seconds } = checklistFigures(5_000, 1_200);
  const largest = 'fixtures/camper-socket/kit.yaml';
  return [
    {
      what: 'checklist of the fixture with the most faults and its bound, seconds',
      found: shown(longestChecklistSeconds(readFileSync(`${root}${largest}`, 'utf8'))),
      wanted: 'below 1',
    },
    {
      what: `checklist of 5,000 wires with ${reworkedPlaces} reworked places and ${faults.toLocaleString('en')} faults, ${short} readings (bound ${bound}), seconds`,
      found: shown(seconds),
      wanted: 'below 10',
    },
  ];
}

function shown(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toFixed(1);
}

function tableOf(rows: readonly Row[]): string {
  return [
    '| ratio | found | wanted |',
    '| --- | --- | --- |',
    ...rows.map((row) => `| ${row.what} | ${row.found} | ${row.wanted} |`),
  ].join('\n');
}

const rows: Row[] = [];
rows.push(
  ...(await netRows(10_000, 7)),
  ...(await netRows(100_000, 3)),
  ...(await proofRows()),
  ...(await heapRows()),
  ...faultRows(),
  ...checklistRows(),
  ...electricalRows(),
);
const bundle = `${root}packages/cli/dist/loomproof.cjs`;
if (existsSync(bundle)) {
  rows.push({
    what: 'the bundled program proving a small kit over `node -e 0`, whole processes',
    found: shown(processRatio([bundle, 'prove', 'fixtures/van-beacon/kit.yaml'], 9, root)),
    wanted: 'at most 3',
  });
  const { ratio: slowest, kit, kits } = sheetsFigure(bundle, root);
  rows.push({
    what: `the bundled program writing all documents of a kit over \`node -e 0\`, whole processes, the slowest of ${kits} kits (${kit})`,
    found: shown(slowest),
    wanted: 'under 25',
  });
} else process.stdout.write('The bundled program is not there; `npm run build` makes it.\n');
const table = tableOf(rows);
process.stdout.write(`${table}\n`);
if (process.argv.includes('--write')) {
  const text = readFileSync(document, 'utf8');
  const [from, to] = [text.indexOf(begin), text.indexOf(end)];
  if (from < 0 || to < from) throw new Error('docs/performance.md has lost its marks');
  writeFileSync(document, `${text.slice(0, from + begin.length)}\n\n${table}\n\n${text.slice(to)}`);
}
