import * as z from 'zod';
import { diagnosticSchema } from '../output/diagnostic-schema.ts';

const number = z.number().nullable();
const lossPart = z.strictObject({ what: z.string(), volts: z.number() }).meta({
  id: 'part',
  description: 'a conductor, joint, contact or diode on the way, with the volts it takes',
});

const dropRow = z
  .strictObject({
    circuit: z.string().describe('the load'),
    ampere: number.describe('the current that it is designed for'),
    lengthMm: number.describe('conductor out and return'),
    size: z.string().nullable().describe('the smallest conductor on the way, as written'),
    ohm: number.describe('conductors, joints and contacts on the way, out and return'),
    dropVolt: number,
    limitVolt: number,
    marginVolt: number,
    source: z.string().nullable().describe('where the limit comes from'),
    smallest: z.string().nullable().describe('the smallest standard size that would keep the limit'),
    parts: z.array(lossPart),
    outParts: z.int().describe('how many of the parts lie ahead of the load'),
    state: z.array(z.string()).describe('what is off where it loses most; empty where everything is on'),
    missing: z.array(z.string()),
  })
  .meta({ id: 'drop', description: 'what a circuit loses; null where it is not known' });

const protectionRow = z
  .strictObject({
    conductor: z.string(),
    size: z.string().nullable(),
    fuse: z.string().nullable().describe('the nearest towards the supply, or null'),
    ratingAmpere: number,
    limitAmpere: number,
    marginAmpere: number,
    source: z.string().nullable(),
    missing: z.array(z.string()),
  })
  .meta({ id: 'protection', description: 'a conductor with the fuse ahead of it' });

const loadingRow = z
  .strictObject({
    what: z.string(),
    is: z.enum(['fuse', 'output', 'conductor']),
    ampere: z.number(),
    leastAmpere: number,
    mostAmpere: number,
    state: z.array(z.string()).describe('what is off where it carries most; empty where everything is on'),
    source: z.string(),
  })
  .meta({ id: 'loading', description: 'a fuse, an output or a conductor with the current that it carries' });

/** What `loomproof limits --json` prints. */
export const limitsSchema = z.strictObject({
  kit: z.string().nullable(),
  revision: z.string().nullable(),
  digest: z.string().nullable(),
  changes: z
    .strictObject({
      size: z.array(z.string()),
      length: z.array(z.string()),
      fuse: z.array(z.string()),
      load: z.array(z.string()),
    })
    .optional()
    .describe('what was asked to be different from the kit file'),
  variants: z.array(
    z
      .strictObject({
        variant: z.string(),
        verdict: z.enum(['proved', 'refuted', 'undecided']).nullable(),
        drops: z.array(dropRow),
        protection: z.array(protectionRow),
        loading: z.array(loadingRow),
        leftAlone: z
          .strictObject({ drops: z.array(dropRow), loading: z.array(loadingRow) })
          .describe('the circuits of the parts that the kit leaves alone: told, not judged'),
      })
      .meta({ id: 'variant' }),
  ),
  diagnostics: z.array(diagnosticSchema),
});
