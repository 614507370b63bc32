import * as z from 'zod';

const place = { file: z.string(), line: z.int().min(1), column: z.int().min(1) };

/** A diagnostic in the JSON of every command. */
export const diagnosticSchema = z
  .strictObject({
    code: z.string().describe('see docs/messages.md'),
    severity: z.enum(['error', 'warning']),
    message: z.string(),
    file: place.file.nullable(),
    line: place.line.nullable(),
    column: place.column.nullable(),
    help: z.string().nullable(),
    related: z.array(z.strictObject({ message: z.string(), ...place })),
  })
  .meta({ id: 'diagnostic', description: 'something wrong with the input; lines and columns count from 1' });
