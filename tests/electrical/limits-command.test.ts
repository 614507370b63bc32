import { describe, expect, it } from 'vitest';
import { ladderKit } from '../support/ladder-kit.ts';
import { runInMemory } from '../support/memory-io.ts';
import { publishedSchemaText, publishedValidator } from '../support/published-schema.ts';

const boat = 'fixtures/abandoned-feed/kit.yaml';
const groomer = 'fixtures/fuse-raised/kit.yaml';

/** What `limits --json` prints, as far as these tests look at it. */
type LimitsJson = {
  readonly variants: readonly {
    readonly verdict: string;
    readonly drops: readonly {
      circuit: string;
      dropVolt: number;
      limitVolt: number;
      source: string;
      ohm: number;
      parts: readonly unknown[];
      outParts: number;
      state: readonly string[];
    }[];
    readonly protection: readonly { conductor: string; fuse: string | null; limitAmpere: number | null }[];
  }[];
};

async function jsonOf(...argv: readonly string[]): Promise<{ code: number; json: LimitsJson }> {
  const { code, out } = await runInMemory(['limits', ...argv, '--json']);
  return { code, json: JSON.parse(out()) as LimitsJson };
}

describe('loomproof limits', () => {
  it('loses what resistivity, length, area, temperature and the joints on the way add up to', async () => {
    const { code, json } = await jsonOf(boat);
    expect(code).toBe(0);
    const row = json.variants[0]?.drops.find((one) => one.circuit === 'alarm');
    // Annealed copper, 0.017241 ohm mm2/m at 20 degrees and 0.00393 a degree; areas of AWG 10 and AWG 16 by ASTM B258.
    const copper = 0.017241 * ((0.15 + 2) / 5.2612 + (9 + 9) / 1.3087) * (1 + 0.00393 * 10);
    // Two studs and crimps at the battery, the fuse with its contacts, the bar, the alarm and the way back: 17 joints.
    const expected = (3 / 12) * (copper + 17 * 0.001);
    expect(Math.abs((row?.dropVolt ?? 0) - expected)).toBeLessThan(2e-5);
    // 3 % for a critical circuit on a boat (ABYC E-11 tables IX and X).
    expect(row?.limitVolt).toBeCloseTo(0.36, 12);
    expect(row?.source).toContain('ABYC E-11');
  });

  it('allows 150 % of table 5 ahead of 16 AWG with 105 degree insulation: 37.5 A (33 CFR 183.455)', async () => {
    const { json } = await jsonOf(boat);
    const row = json.variants[0]?.protection.find((one) => one.conductor === 'alarm feed');
    expect(row).toMatchObject({ fuse: 'panel fuse', limitAmpere: 37.5 });
    const kept = await jsonOf(boat, '--fuse', 'panel fuse=35 A');
    expect(kept.json.variants[0]?.verdict).toBe('proved');
    const broken = await jsonOf(boat, '--fuse', 'panel fuse=40 A');
    expect(broken.json.variants[0]?.verdict).toBe('refuted');
    expect(broken.code).toBe(1);
  });

  it('lets a size, a length and a load be changed, and shows how the margins move', async () => {
    const { code, out } = await runInMemory(['limits', groomer, '--load', 'wiper heater=200 W']);
    expect(code).toBe(1);
    expect(out()).toMatch(/wiper heater +8\.333 .* -\d\.\d{3} \(was 0\.\d{3}\)/);
    const thick = await jsonOf(groomer, '--size', 'heater feed=6 mm2', '--length', 'heater feed=1 m');
    const drop = (json: LimitsJson): number =>
      json.variants[0]?.drops.find((one) => one.circuit === 'wiper heater')?.dropVolt ?? 0;
    const { json } = await jsonOf(groomer);
    expect(drop(thick.json)).toBeLessThan(drop(json));
  });

  it('refuses a length that leaves no room for a tap, and a name of another kind', async () => {
    const bare = await runInMemory([
      'limits',
      'fixtures/shared-return/kit.yaml',
      '--length',
      'deck feed=0 m',
    ]);
    expect(bare.code).toBe(2);
    expect(bare.err()).toContain('deck feed cannot be 0 mm long');
    const load = await runInMemory(['limits', groomer, '--fuse', 'wiper heater=5 A']);
    expect(load.code).toBe(2);
    expect(load.err()).toContain('no fuse is called `wiper heater`');
    expect(load.err()).not.toContain('did you mean `wiper heater`');
  });

  it('changes the fuse that is asked for, and no other that takes the same part', async () => {
    const { json } = await jsonOf(groomer, '--fuse', 'F6=10 A');
    expect(json.variants[0]?.protection.find(({ fuse }) => fuse === 'F6')).toMatchObject({
      ratingAmpere: 10,
    });
    const size = await jsonOf(groomer, '--size', 'thin branch=1.5 mm2');
    // The capacity that was said of the thin wire says nothing of another one.
    expect(
      size.json.variants[0]?.protection.find(({ conductor }) => conductor === 'thin branch'),
    ).toMatchObject({
      limitAmpere: null,
    });
  });

  it('prints CSV with one head for each table', async () => {
    const { code, out } = await runInMemory(['limits', groomer, '--csv']);
    expect(code).toBe(0);
    const rows = out().trimEnd().split('\r\n');
    expect(rows[0]).toBe(
      'variant,table,circuit,current A,length m,size,resistance ohm,drop V,limit V,margin V,smallest by drop,worst state,source',
    );
    expect(rows.filter((row) => row.startsWith('variant,'))).toHaveLength(5);
    expect(
      rows.some((row) =>
        row.startsWith(
          'only,conductors and the fuse ahead of them,thin branch,0.75 mm2,F6,15.00,15.00,0.000,',
        ),
      ),
    ).toBe(true);
  });

  it.each([boat, groomer, 'fixtures/two-outputs/kit.yaml'])(
    'prints JSON of %s that keeps to the published schema',
    async (kit) => {
      const validate = publishedValidator('limits');
      validate((await jsonOf(kit)).json);
      expect(validate.errors).toBeNull();
      const unusable = await runInMemory(['limits', 'fixtures/van-beacon/kit.yaml', '--json']);
      validate(JSON.parse(unusable.out()));
      expect(validate.errors).toBeNull();
    },
  );

  it('lists the circuits that the kit leaves alone in every form, and holds nothing against them', async () => {
    const text = ladderKit({ rungs: 2, returns: 'ground', untouchedWires: 4, limits: true }).replace(
      'K V0:1, size: 1 mm2, length: 1 m',
      'K V0:1, size: 1 mm2, length: 90 m',
    );
    const said = async (...form: string[]): Promise<string> => {
      const { code, out } = await runInMemory(['limits', 'kit.yaml', ...form], {
        files: new Map([['kit.yaml', text]]),
      });
      expect(code).toBe(0);
      return out();
    };
    expect(await said()).toMatch(
      /circuits that the kit leaves alone, told and not judged\n.*\n +V0 +1\.333 +93\.000 /,
    );
    expect(await said('--csv')).toMatch(
      /only,"?losses of circuits that the kit leaves alone[^\n]*,V0,1\.333,93\.000,/,
    );
    const page = await said('--page');
    expect(page.match(/<table>/g)).toHaveLength(5);
    expect(page).toContain('Volts lost along the way of V0');
    const json = JSON.parse(await said('--json')) as {
      readonly variants: readonly {
        leftAlone: { drops: readonly { circuit: string; marginVolt: number }[] };
      }[];
    };
    expect(json.variants[0]?.leftAlone.drops).toMatchObject([{ circuit: 'V0' }]);
    expect(json.variants[0]?.leftAlone.drops[0]?.marginVolt).toBeLessThan(0);
    const validate = publishedValidator('limits');
    validate(json);
    expect(validate.errors).toBeNull();
    const moved = await said('--length', 'V0 b=2 m');
    expect(moved).toMatch(/V0 +1\.333 .* -\d\.\d{3} \(was -\d\.\d{3}\)/);
  });

  it('publishes the schema that the program prints', async () => {
    const { out } = await runInMemory(['schema', '--of', 'limits']);
    expect(out()).toBe(publishedSchemaText('limits'));
  });

  it('names the state in which a circuit loses most, and what its way resists', async () => {
    const { json } = await jsonOf('fixtures/two-outputs/kit.yaml');
    for (const { parts, ohm, outParts, state } of json.variants[0]?.drops ?? []) {
      expect(parts.length).toBeGreaterThan(outParts);
      expect(outParts).toBeGreaterThan(0);
      expect(ohm).toBeGreaterThan(0);
      expect(Array.isArray(state)).toBe(true);
    }
  });

  it('prints a page with the tables and a picture of each circuit, and quotes what a kit says', async () => {
    const { out } = await runInMemory(['limits', groomer, '--page']);
    expect(out()).toMatch(/^<!doctype html>/);
    const { json } = await jsonOf(groomer);
    expect(out().match(/<svg /g)).toHaveLength(json.variants[0]?.drops.length ?? 0);
    expect(out().match(/<table>/g)).toHaveLength(3);
    const asked = await runInMemory(['limits', groomer, '--page', '--load', 'wiper heater=200 W']);
    expect(asked.out()).toContain('Not as the kit file says: load wiper heater=200 W');
    expect(asked.out()).toContain('not proved to be kept');
    const named = await runInMemory(['limits', 'kit.yaml', '--page'], {
      files: new Map([
        [
          'kit.yaml',
          (await import('../support/fixture-folder.ts'))
            .readFixture('fuse-raised/kit.yaml')
            .text.replace('kit: heated wiper', 'kit: "<b>wiper</b> & more"'),
        ],
      ]),
    });
    expect(named.out()).toContain('&lt;b&gt;wiper&lt;/b&gt; &amp; more');
    expect(named.out()).not.toContain('<b>');
  });

  it('refuses a kit without electrical data, a name that is not there and a value without unit', async () => {
    const plain = await runInMemory(['limits', 'fixtures/van-beacon/kit.yaml']);
    expect(plain.code).toBe(2);
    expect(plain.err()).toContain('no electrical data');
    const unknown = await runInMemory(['limits', groomer, '--size', 'heatr feed=4 mm2']);
    expect(unknown.code).toBe(2);
    expect(unknown.err()).toContain('heater feed');
    const bare = await runInMemory(['limits', groomer, '--fuse', 'F6=20']);
    expect(bare.code).toBe(2);
  });
});
