import { inputDigest, type KitFile, Rework, readKit, type TableLoader } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { describe, expect, it } from 'vitest';
import { asFound, bench } from '../support/bench-kit.ts';
import { breakKit, readBrokenCase } from '../support/broken-case.ts';
import { foldersIn, readFixture, tablesBeside } from '../support/fixture-folder.ts';
import { kitNames, kitPath } from '../support/kit-fixtures.ts';
import { complaintsOf, kitOf, pointedComplaintsOf } from '../support/kit-text.ts';
import { runInMemory } from '../support/memory-io.ts';

/** A kit that does nothing but fasten a wire, on what another kit leaves. */
function upon(file: string, digest: string, wire: string, variant = ''): string {
  const which = variant === '' ? '' : `, variant: "${variant}"`;
  return `kit: upper\nrevision: A\nbefore: { kit: "${file}", digest: ${digest}${which} }\nwork: [{ do: fasten, wire: "${wire}" }]\nwanted: { retired: [{ wire: "${wire}" }] }\n`;
}

/** Everything that can be seen of a harness at a moment, in words that do not depend on how it came to be so. */
function seen(rework: Rework): readonly string[] {
  const { job } = rework;
  const address = (place: number): string => job.places[place]?.address ?? '-';
  const lines: string[] = [];
  const nets = new Map<number, string[]>();
  for (const [place, label] of rework.labels(rework.ordinal, rework.conductsNow).entries())
    nets.set(label, [...(nets.get(label) ?? []), address(place)]);
  for (const net of nets.values()) lines.push(`net ${net.sort().join(' ')}`);
  for (const [index, one] of job.connectors.entries()) {
    const other = job.connectors[rework.counterpart[index] ?? -1]?.name ?? '-';
    const state = rework.plugged[index] === true ? 'plugged' : 'apart';
    lines.push(
      `${one.name} faces ${other}, ${state}, lock ${rework.lock[index]}, latch ${rework.latch[index]}, ${one.zone}`,
    );
  }
  for (const [place, there] of job.places.entries()) {
    const facing = address(rework.facing[place] ?? -1);
    // Half of an adapter had no other half in the bag, and was not known as a source; now it passes on what it faces.
    const passesOn = job.connectors[there.connector]?.device === false && (rework.facing[place] ?? -1) >= 0;
    const source = passesOn && there.source === 'unknown' ? 'never' : there.source;
    const plug = rework.plug.at(place) == null ? 'no plug' : 'plug';
    lines.push(
      `${there.address} ${there.kind}, faces ${facing}, ${plug}, ${there.zone}, chassis ${there.chassis}, source ${source}`,
    );
  }
  const endState = (end: number): string => {
    const joint = job.joints[rework.endJoint[end] ?? -1]?.name;
    const terminal = rework.endTerminal[end] ?? -1;
    const place = rework.terminalPlace[terminal] ?? -1;
    const where =
      joint ?? (place >= 0 ? address(place) : `loose, cover ${rework.endCover.at(end) ?? 'none'}`);
    return `${where}, terminal ${job.terminals[terminal]?.part ?? '-'}, seal ${rework.endSeal.at(end) ?? '-'}`;
  };
  for (const [index, piece] of job.pieces.entries()) {
    if (rework.pieceThere[index] !== 1) continue;
    const wire = job.wires[piece.wire];
    const taps = rework.jointsOn(index).map((joint) => job.joints[joint]?.name);
    const looks = [
      wire?.size?.mm2,
      wire?.colour?.codes,
      wire?.flex,
      wire?.insulationMm,
      wire?.material,
      wire?.temperatureC,
    ];
    lines.push(
      `${piece.name} ${JSON.stringify(looks)} taps [${taps.join(', ')}]: ${piece.ends.map(endState).join(' to ')}`,
    );
  }
  for (const [index, joint] of job.joints.entries()) {
    const state = rework.jointState[index];
    if (state === 'absent' || state === 'removed' || joint.kind === 'jumper') continue;
    lines.push(
      `${joint.kind} ${joint.name} ${joint.part} ${state}, cover ${rework.jointCover.at(index)}, zone ${joint.zone}`,
    );
  }
  for (const [index, element] of job.elements.entries())
    lines.push(`${element.kind} ${element.name} ${rework.fuseFitted[index]}`);
  for (const supply of job.supplies) lines.push(`${supply.name} at ${supply.places.map(address).join()}`);
  return lines.sort();
}

function finished(kit: KitFile, variant: number): Rework {
  const job = kit.variants[variant]?.job;
  if (job === undefined) throw new Error('no such variant');
  const rework = new Rework(job);
  for (const step of job.steps) rework.apply(step);
  return rework;
}

const plain = kitNames.map((name) => [name, kitPath(name), readFixture(kitPath(name)).text] as const);
// Every third of them is enough to meet what only a mistake leaves.
const broken = foldersIn('broken')
  .filter((name, at) => at % 3 === 0 || /lock|latch|fuse|adapter/.test(name))
  .map((name) => {
    const one = readBrokenCase(name);
    return [name, one.kit, breakKit(readFixture(one.kit).text, one)] as const;
  });

describe('the stock of a kit on another kit', () => {
  it.each([...plain, ...broken])('is what %s leaves, to the last terminal', (_name, path, text) => {
    const files = new Map<string, string>();
    const beside = tablesBeside(path);
    const load: TableLoader = (name) => {
      const found = name === 'lower.yaml' ? { name, text } : beside(name);
      if (found !== null && name !== 'lower.yaml') files.set(name, found.text);
      return found;
    };
    const lower = readKit({ name: 'lower.yaml', text }, load).value;
    if (lower === null) throw new Error('the lower kit cannot be used');
    const digest = inputDigest(text, files);
    for (const [index, { variant }] of lower.variants.entries()) {
      const after = finished(lower, index);
      const left = after.job.pieces.find((_, piece) => after.pieceThere[piece] === 1)?.name ?? '';
      const name = variant.name === 'only' ? '' : variant.name;
      const upper = readKit({ name: 'upper.yaml', text: upon('lower.yaml', digest, left, name) }, load);
      // A harness that is not finished is no stock that anyone could write down.
      const jumperLeft = after.job.joints.some(
        (one, at) => one.kind === 'jumper' && after.jointState[at] === 'crimped',
      );
      const looseShared = after
        .freeEnds()
        .some((end) => after.endsOf(after.endTerminal[end] ?? -1).length > 1);
      if (jumperLeft || looseShared) {
        expect(upper.diagnostics.map((one) => one.code)).toEqual(['before-unusable']);
        continue;
      }
      expect(upper.diagnostics).toEqual([]);
      const job = upper.value?.variants[0]?.job;
      if (job === undefined) throw new Error('the upper kit cannot be used');
      expect(seen(new Rework(job))).toEqual(seen(after));
    }
  });
});

const lower = bench({
  bagConnectors: [
    'K8: { cavities: 1..2, into: P }',
    'P: { device: yes, cavities: 1..2, elements: [{ is: load, from: 1, to: 2 }] }',
  ],
  bagWires: [
    'feed: { from: K8:1, to: A, size: 0.5 mm2 }',
    'back: { from: K8:2, to: B, size: 0.5 mm2, to terminal: RING }',
  ],
  parts: ['RING: { is: terminal, size: 0.3..3 mm2, ring: yes }'],
  bagParts: 'TAP: 1',
  work: [
    'do: disconnect, supply: battery',
    'do: tap, run: lamp, at: 30 cm from K1:2, branch: feed@A, with: TAP, as: TAP1',
    'do: attach, end: back@B, stud: G1',
    'do: place, device: P',
    'do: plug, connector: K8',
    'do: reconnect, supply: battery',
  ],
  wanted: ['additions: { more: { to: K1:2, add: [K8:1] }, back: { to: G1, add: [K8:2] } }'],
});
const digest = inputDigest(lower, new Map());
const files = (text = lower): ReadonlyMap<string, string> => new Map([['lower.yaml', text]]);

describe('a kit on another kit', () => {
  it('is judged on what that one leaves, and names its points', () => {
    const text = upon('lower.yaml', digest, 'feed').replace(
      /wanted: .*/,
      'wanted: { circuits: { lamp: [K1:2, K2:1, K8:1] } }',
    );
    const verdict = proveKit(kitOf(text, files()));
    expect(verdict.diagnostics).toEqual([]);
    expect(verdict.verdict).toBe('proved');
    const hops = verdict.variants[0]?.circuits[0]?.proof?.hops() ?? [];
    expect(hops.some((hop) => hop.from === 'TAP1' || hop.to === 'TAP1')).toBe(true);
  });

  it('has the parts of that one, and gives none of them anew', () => {
    const text = upon('lower.yaml', digest, 'feed').replace('work:', 'parts: { CAP: { is: cover } }\nwork:');
    expect(pointedComplaintsOf(text, files())).toEqual([
      'written-twice "CAP": the part `CAP` is known from `lower.yaml` already (every name is written once: take it out here)',
    ]);
  });

  it('is refused where the other file is not the one that is meant, with both digests', () => {
    const text = upon('lower.yaml', digest.slice(0, 12), 'feed');
    expect(complaintsOf(text, files())).toEqual([]);
    const other = lower.replace('30 cm', '31 cm');
    const now = inputDigest(other, new Map()).slice(0, 12);
    expect(complaintsOf(text, files(other))).toEqual([
      `3:38 before-digest: \`lower.yaml\` is not the kit that is meant: its digest is ${now}, and ${digest.slice(0, 12)} is asked for (prove that kit as it is now, see that this one still fits it, and write its new digest)`,
    ]);
    expect(pointedComplaintsOf(upon('lower.yaml', 'latest', 'feed'), files())).toEqual([
      'before-digest "latest": `latest` is no digest (write the 12 or 64 digits that `loomproof prove` prints for that kit)',
    ]);
  });

  it('counts the tables of the other kit into its digest', () => {
    const table = 'wire,from,to\nlamp2,K1:4,K5:1\n';
    const tabled = lower.replace('  zone: dry\n  supplies', '  zone: dry\n  wire table: t.csv\n  supplies');
    const sum = inputDigest(tabled, new Map([['t.csv', table]]));
    const beside = new Map([...files(tabled), ['t.csv', table]]);
    expect(complaintsOf(upon('lower.yaml', sum, 'lamp2'), beside)).toEqual([]);
    beside.set('t.csv', `${table}\n`);
    expect(complaintsOf(upon('lower.yaml', sum, 'lamp2'), beside)[0]).toMatch(/^3:38 before-digest: /);
  });

  it('is refused where the other is missing, cannot be used, or is not proved', () => {
    expect(pointedComplaintsOf(upon('lower.yaml', digest, 'feed'))).toEqual([
      'no-kit ""lower.yaml"": the kit file `lower.yaml` cannot be read (name a kit file beside this one)',
    ]);
    const wrong = lower.replace('from: K8:1', 'from: K8:7');
    expect(
      pointedComplaintsOf(upon('lower.yaml', inputDigest(wrong, new Map()), 'feed'), files(wrong)),
    ).toEqual([
      'before-unusable ""lower.yaml"": `lower.yaml` cannot be used, so nothing stands on it',
      'unknown-name "K8:7": no place or splice is called `K8:7` (did you mean `K8:1`?)',
    ]);
    const open = lower.replace('  - { do: plug, connector: K8 }\n', '');
    const text = upon('lower.yaml', inputDigest(open, new Map()), 'feed');
    const verdict = proveKit(kitOf(text, files(open)));
    expect(verdict.verdict).toBeNull();
    expect(verdict.diagnostics.map((one) => [one.code, one.message])).toEqual([
      ['before-unproved', '`lower.yaml` is refuted, so nothing stands on it'],
    ]);
  });

  it('is refused where the kits go in a circle or are too many', () => {
    const a = upon('b.yaml', digest, 'w');
    const b = upon('a.yaml', digest, 'w');
    const circle = complaintsOf(
      a,
      new Map([
        ['a.yaml', a],
        ['b.yaml', b],
      ]),
    );
    expect(circle.filter((line) => line.includes('before-cycle'))).toEqual([
      '3:16 before-cycle: `b.yaml` stands on itself (the way here: `b.yaml`, `a.yaml`, `b.yaml`)',
    ]);
    const own = complaintsOf(
      upon('./b.yaml', digest, 'w'),
      new Map([
        ['./b.yaml', upon('b.yaml', digest, 'w')],
        ['b.yaml', upon('b.yaml', digest, 'w')],
      ]),
    );
    expect(own.filter((line) => line.includes('before-cycle'))).toHaveLength(1);
    const tower = new Map(
      Array.from({ length: 12 }, (_, at) => [`k${at}.yaml`, upon(`k${at + 1}.yaml`, digest, 'w')]),
    );
    expect(
      complaintsOf(upon('k0.yaml', digest, 'w'), tower).filter((line) => line.includes('before-depth')),
    ).toEqual([expect.stringContaining('3:16 before-depth: at most 8 kits stand on each other')]);
  });

  it('counts what the kits below hold into the limits of one run', () => {
    const rows = Array.from({ length: 80_000 }, (_, at) => `w${at},G1,G2`).join('\n');
    const table = `wire,from,to\n${rows}\n`;
    const wide = lower.replace('  zone: dry\n  supplies', '  zone: dry\n  wire table: t.csv\n  supplies');
    const sum = inputDigest(wide, new Map([['t.csv', table]]));
    const found = pointedComplaintsOf(
      upon('lower.yaml', sum, 'feed'),
      new Map([...files(wide), ['t.csv', table]]),
    );
    expect(found).toEqual([
      'too-many "": the kits and variants of one run hold more than 150000 conductors together',
    ]);
  }, 60_000);

  it('says which variant of the other it stands on, by its own variant where they differ', () => {
    const two = lower
      .replace('parts:', 'variants: { side: [left, right] }\nparts:')
      .replace('30 cm', '{ side=left: 30 cm from K1:2, else: 40 cm from K1:2 }')
      .replace(' } from K1:2', ' }');
    const sum = inputDigest(two, new Map());
    const help = '(say which under `variant`: side=left, side=right)';
    expect(pointedComplaintsOf(upon('lower.yaml', sum, 'feed'), files(two))).toEqual([
      `before-variant ""lower.yaml"": \`lower.yaml\` has 2 such variants, and this kit stands on one ${help}`,
    ]);
    expect(pointedComplaintsOf(upon('lower.yaml', sum, 'feed', 'side=top'), files(two))).toEqual([
      `before-variant ""side=top"": \`lower.yaml\` has no variant \`side=top\` ${help}`,
    ]);
    const choice = upon('lower.yaml', sum, 'feed', 'WHICH')
      .replace('"WHICH"', '{ hatch=low: side=left, hatch=high: side=right }')
      .replace('before:', 'variants: { hatch: [low, high] }\nbefore:');
    const kit = kitOf(choice, files(two));
    const mark = kit.variants.map(({ job }) =>
      job.positions.get(job.joints.find((one) => one.name === 'TAP1')?.node ?? -1),
    );
    expect(mark).toEqual([
      { fromEnd: 0, mm: 300 },
      { fromEnd: 0, mm: 400 },
    ]);
  });

  it('has no stock of its own beside it', () => {
    const text = bench({ work: ['do: fasten, wire: lamp'], wanted: asFound }).replace(
      'stock:',
      `before: { kit: lower.yaml, digest: ${digest} }\nstock:`,
    );
    expect(pointedComplaintsOf(text, files())[0]).toBe(
      'form "before": the kit file has both `stock` and `before` (what another kit leaves is the whole stock: keep one of them)',
    );
    expect(complaintsOf('kit: a\nrevision: b\nwork: []\nwanted: {}\n')).toEqual([
      expect.stringContaining(
        'form: the kit file lacks `stock` (or `before`, where it stands on another kit)',
      ),
    ]);
  });
});

describe('the commands on a kit that stands on another', () => {
  const [path, first] = ['fixtures/market-trailer/kit.yaml', 'fixtures/market-trailer/awning-lamp.yaml'];

  it('prove it, and bind its digest to that of the other', async () => {
    const { code, out } = await runInMemory(['prove', path, '--json']);
    expect(code).toBe(0);
    const verdict = JSON.parse(out()) as { digest: string; standsOn: unknown };
    expect(verdict.standsOn).toEqual([
      {
        file: 'awning-lamp.yaml',
        kit: 'awning lamp on a market trailer',
        revision: 'A',
        variants: ['hatch=left', 'hatch=right'],
      },
    ]);
    const text = await runInMemory(['prove', path]);
    expect(text.out()).toContain(
      '\nstands on awning-lamp.yaml: awning lamp on a market trailer, revision A, hatch=left and hatch=right, proved as well\n',
    );
    const [kit, under] = [path, first].map((one) => readFixture(one.slice('fixtures/'.length)).text);
    expect(verdict.digest).toBe(inputDigest(kit ?? '', new Map([['awning-lamp.yaml', under ?? '']])));
  });

  it('trace through the tap of the first before the work, and past it after', async () => {
    const { code, out } = await runInMemory(['trace', path, 'K4:1', '--json']);
    expect(code).toBe(0);
    const { variants } = JSON.parse(out()) as {
      variants: {
        before: { places: string[]; path: { to: string; made: unknown }[] };
        after: { places: string[] };
      }[];
    };
    for (const { before, after } of variants) {
      expect(before.places).toContain('K2:1');
      expect(before.path.some((hop) => hop.to === 'TAP1' && hop.made === 'stock')).toBe(true);
      expect(after.places).toContain('K1:4');
      expect(after.places).not.toContain('K2:1');
    }
  });

  it('show in diff that the second begins where the first ended', async () => {
    const { out } = await runInMemory(['diff', first, path, '--json']);
    // Before the work of the first nothing is tapped; before that of the second its tap is there.
    expect(out()).toContain('canopy:1');
    expect(out()).toContain('TAP1');
  });
});
