import { describe, expect, it } from 'vitest';
import { kitNames, kitPath } from '../support/kit-fixtures.ts';
import { runInMemory } from '../support/memory-io.ts';

const kit = 'fixtures/van-beacon/kit.yaml';

interface HopJson {
  readonly from: string;
  readonly to: string;
  readonly made: string | number;
}

interface MomentJson {
  readonly places: readonly string[];
  readonly path: readonly HopJson[];
}

interface TraceJson {
  readonly cavity: string;
  readonly variants: readonly {
    readonly variant: string;
    readonly before: MomentJson | null;
    readonly after: MomentJson | null;
  }[];
}

async function traceJson(path: string, cavity: string): Promise<TraceJson> {
  const { code, out, err } = await runInMemory(['trace', path, cavity, '--json']);
  expect(err()).toBe('');
  expect(code).toBe(0);
  return JSON.parse(out()) as TraceJson;
}

describe('trace', () => {
  it('shows a cavity before and after, with the step of every hop', async () => {
    const { code, out } = await runInMemory(['trace', kit, 'K10:6', '--variant', 'build=early']);
    expect(code).toBe(0);
    expect(out().replace(/digest [0-9a-f]{12}/, 'digest DIGEST')).toBe(
      [
        'K10:6  side-door warning beacon, revision B',
        '1 of 2 variants; digest DIGEST',
        '',
        'build=early:',
        '  before: joined to DM:6, by copper and plugged connectors',
        '    K10:6',
        '      | plugged together, as found',
        '    DM:6',
        '  after: joined to DM:6, K20:2 and BC:2, by copper and plugged connectors',
        '    K10:6',
        '      | wire beacon return, BK, 0.5 mm2, from the kit; in K10:6, step 12',
        '    K20:2',
        '      | plugged together, from the kit',
        '    BC:2',
        '    and from K10:6',
        '      | plugged together, as found',
        '    DM:6',
        '',
        'As the kit file says, nothing is judged here; see `loomproof prove`.',
        '',
      ].join('\n'),
    );
  });

  it('puts variants of which the same is to be said together', async () => {
    const { out } = await runInMemory(['trace', kit, 'K10:6']);
    expect(out()).toContain('\nbuild=early and build=late:\n');
  });

  it('reaches each joined place of each cavity of each kit by a chain of hops', async () => {
    for (const name of kitNames) {
      const path = `fixtures/${kitPath(name)}`;
      const proved = await runInMemory(['prove', path, '--json']);
      const { variants } = JSON.parse(proved.out()) as {
        variants: { circuits: { name: string; places: string[] }[] }[];
      };
      for (const { name: circuit, places } of variants[0]?.circuits ?? []) {
        const [first = ''] = places;
        const trace = await traceJson(path, first);
        const after = trace.variants[0]?.after;
        const reached = new Set([first]);
        for (const hop of after?.path ?? []) {
          expect(reached, `${name}, ${circuit}`).toContain(hop.from);
          reached.add(hop.to);
        }
        // What prove says of a circuit that it proves is what trace finds from one of its places.
        expect([first, ...(after?.places ?? [])].sort(), `${name}, ${circuit}`).toEqual([...places].sort());
        for (const place of places) expect(reached, `${name}, ${circuit}`).toContain(place);
      }
    }
  });

  it('says so where a variant has no such cavity', async () => {
    const text = [
      'kit: a',
      'revision: b',
      'variants: { roof: [high, low] }',
      'stock:',
      '  connectors:',
      '    K1: { cavities: 1..2 }',
      '    K2: { cavities: 1..2, only: roof=high }',
      '  wires:',
      '    w: { from: K1:1, to: K1:2 }',
      'work:',
      '  - { do: open lock, connector: K1 }',
      'wanted: { circuits: { a: [K1:1, K1:2] } }',
    ].join('\n');
    const files = new Map([['kit.yaml', text]]);
    const { code, out } = await runInMemory(['trace', 'kit.yaml', 'K2:1'], { files });
    expect(code).toBe(0);
    expect(out()).toContain('roof=high:\n  before: K2:1 is joined to no other place');
    expect(out()).toContain('roof=low:\n  there is no K2:1\n');
  });

  it.each([
    ['K10:99', 'did you mean `K10:9`?'],
    ['nowhere at all', 'an address is written CONNECTOR:CAVITY'],
  ])('refuses the unknown cavity %s', async (cavity, help) => {
    const { code, out, err } = await runInMemory(['trace', kit, cavity]);
    expect(code).toBe(2);
    expect(out()).toBe('');
    expect(err()).toContain(`no place is called \`${cavity}\``);
    expect(err()).toContain(help);
    const told = await runInMemory(['trace', kit, cavity, '--json']);
    expect(JSON.parse(told.out())).toMatchObject({ kit: 'side-door warning beacon', variants: [] });
  });
});
