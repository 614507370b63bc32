import * as z from 'zod';

/** A text with something to read in it: a blank one says nothing, wherever it stands. */
export const textSchema = z.string().regex(/\S/);

/** One such text, or a list of them. */
export const textsSchema = z.union([textSchema, z.array(textSchema)]);
