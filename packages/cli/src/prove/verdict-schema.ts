import { findingKinds } from '@loomproof/verify';
import * as z from 'zod';
import { diagnosticSchema } from '../output/diagnostic-schema.ts';

const verdict = z.enum(['proved', 'refuted', 'undecided']);
const names = z.array(z.string());
const step = z.int().min(1).nullable().describe('number of the step as written in the kit file');
const obligation = z.int().min(1).max(10);
const made = z
  .union([z.literal('stock'), z.literal('kit'), z.int().min(1)])
  .describe('as found, as the kit was made, or the number of the step that made it');

const hop = z
  .strictObject({
    by: z.enum(['conductor', 'crimp', 'seat', 'joint', 'mate', 'jumper', 'element', 'chassis']),
    from: z.string(),
    to: z.string(),
    name: z.string().nullable(),
    colour: z.string().nullable(),
    size: z.string().nullable(),
    made,
  })
  .meta({ id: 'hop', description: 'one join of a path; each hop begins where an earlier one ended' });
const path = z.array(hop);

const pair = z.tuple([z.string(), z.string()]);
const fragment = z.strictObject({
  places: names,
  stops: z.array(
    z.strictObject({
      end: z.string(),
      state: z.enum(['cut', 'stripped', 'terminal', 'covered']),
      step,
    }),
  ),
});
const reach = z
  .strictObject({ source: z.string(), certain: z.boolean(), path })
  .nullable()
  .describe('the source that reaches the point and the way to it; null when none does');

const driveState = z
  .strictObject({ on: names, off: names })
  .meta({ id: 'driveState', description: 'which switches and drives are on, and which off' });

const witness = z
  .discriminatedUnion('is', [
    z.strictObject({
      is: z.literal('nets'),
      joins: z.array(
        z.strictObject({ between: pair, path, step, cause: z.enum(['step', 'kit as made', 'never parted']) }),
      ),
      opens: z.array(
        z.strictObject({
          circuit: z.string().nullable(),
          fragments: z.array(fragment),
          missing: z.array(pair),
          step,
          cause: z.enum(['step', 'never joined']),
        }),
      ),
    }),
    z.strictObject({ is: z.literal('path'), path }),
    z.strictObject({
      is: z.literal('touch'),
      what: z.string(),
      name: z.string(),
      steps: z.array(z.int().min(1)),
    }),
    z.strictObject({ is: z.literal('stub'), wire: z.string(), end: z.string(), at: names, reach }),
    z.strictObject({ is: z.literal('bare'), end: z.string(), reach }),
    z.strictObject({
      is: z.literal('fit'),
      part: z.string(),
      wire: z.string().nullable(),
      value: z.string().nullable(),
      range: z.string().nullable(),
    }),
    z.strictObject({ is: z.literal('refusal'), reason: z.string() }),
    z.strictObject({ is: z.literal('state'), what: z.string(), expected: z.string(), found: z.string() }),
    z.strictObject({ is: z.literal('count'), part: z.string(), inBag: z.number(), used: z.number() }),
    z.strictObject({
      is: z.literal('drawing'),
      row: z.string(),
      line: z.int().min(1).nullable(),
      drawn: z.string(),
      found: z.string(),
    }),
    z.strictObject({ is: z.literal('missing'), items: names.describe('what the kit file has to say first') }),
    z.strictObject({
      is: z.literal('limit'),
      quantity: z.string(),
      value: z.number(),
      limit: z.number(),
      unit: z.enum(['V', 'A', 'mm', 'pieces']),
      source: z.string().describe('where the limit comes from'),
      parts: z
        .array(z.strictObject({ what: z.string(), volts: z.number() }))
        .describe('what takes how much of a loss, largest first'),
    }),
    z.strictObject({
      is: z.literal('power'),
      load: z.string(),
      volts: z.number().nullable().describe('null where a resistance that decides them is not said'),
      state: driveState,
      open: hop.nullable().describe('the return that is taken as open'),
      path,
    }),
    z.strictObject({ is: z.literal('tie'), between: pair, state: driveState, path }),
    z.strictObject({
      is: z.literal('variants'),
      place: z.string(),
      first: z.string(),
      second: z.string(),
    }),
  ])
  .meta({ id: 'witness', description: 'the evidence as data; `is` says which form it has' });

const kind = z.enum(Object.keys(findingKinds));
const finding = z
  .strictObject({
    kind,
    obligation,
    message: z.string(),
    step,
    points: names.describe('addresses and names that it concerns, sorted'),
    witness,
    culprits: z.array(z.int().min(1)).describe('all steps to blame, in order'),
    consequences: z
      .array(z.strictObject({ kind, obligation, step, points: names }))
      .describe('further faults of the same cause'),
  })
  .meta({ id: 'finding' });

const variant = z
  .strictObject({
    variant: z.string().describe('axis=value, several with blanks between; `only` where there are no axes'),
    verdict,
    circuits: z.array(
      z.strictObject({
        name: z.string(),
        verdict,
        places: names,
        proof: path.nullable().describe('a tree of hops that joins the places; null when it is not whole'),
      }),
    ),
    findings: z.array(finding),
    obligations: z.array(z.strictObject({ obligation, verdict, note: z.string().nullable() })),
    stubs: z.array(
      z.strictObject({
        wire: z.string(),
        end: z.string(),
        at: names,
        state: z.enum(['dead', 'live', 'not known']),
        declared: z.boolean(),
        covered: z.string().nullable(),
      }),
    ),
    disturbed: names,
    deviations: z.array(
      z.strictObject({
        allows: z.string(),
        at: z.string().nullable(),
        by: z.string(),
        why: z.string(),
        excuses: names,
      }),
    ),
    advice: names,
  })
  .meta({ id: 'variant' });

/** What `loomproof prove --json` prints; its JSON Schema is published as docs/verdict.schema.json. */
export const verdictSchema = z.strictObject({
  kit: z.string().nullable().describe('null when the kit file could not be read so far'),
  revision: z.string().nullable(),
  digest: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .nullable()
    .describe('SHA-256 of the inputs; null when the kit file could not be read'),
  verdict: verdict.nullable().describe('null: the input could not be used and nothing was judged'),
  variants: z.array(variant),
  judged: z.int().min(0).describe('how many variants were judged'),
  variantCount: z.int().min(0).describe('how many variants the kit has'),
  notClaimed: z.array(obligation).describe('obligations about which nothing is said'),
  standsOn: z
    .array(
      z.strictObject({
        file: z.string(),
        kit: z.string(),
        revision: z.string(),
        variants: z.array(z.string()),
      }),
    )
    .describe(
      'kits whose finished harness is the stock of this one, with the variants of theirs that matter',
    ),
  diagnostics: z.array(diagnosticSchema),
});
