import * as z from 'zod';
import { textSchema as text, textsSchema as texts } from '../text/index.ts';

const edge = z.enum(['top', 'bottom', 'left', 'right']);
const corner = z.enum(['top left', 'top right', 'bottom left', 'bottom right']);

const numbering = {
  rows: text.optional().describe('how many rows'),
  columns: text.optional().describe('how many positions in a row'),
  count: z
    .enum(['rows', 'columns', 'serpentine rows', 'serpentine columns', 'odd and even rows'])
    .optional()
    .describe('how the count runs, by rows when not said; serpentine turns round at each end'),
  labels: z
    .enum(['numbers', 'letters', 'row letters', 'column letters'])
    .optional()
    .describe('numbers when not said; row letters give A1 A2, the letter telling the row'),
  first: text.optional().describe('the first label: 1, 01, A or A1 when not said, by the kind of labels'),
  start: corner.optional().describe('the corner with the first label as seen, top left when not said'),
  blocked: texts.optional().describe('positions moulded shut: labels, or `row 2 place 4`'),
  'blocked positions': z
    .enum(['counted', 'not counted'])
    .optional()
    .describe('whether a blocked position uses up a label, counted when not said'),
  skip: texts.optional().describe('letters left out, I O Q l o when not said; `none` leaves out none'),
};

/**
 * The `face` entry of a connector in a kit file: where its cavities are, as seen from one side. It says how they are
 * numbered (`rows` and `columns`, or several `blocks`) or writes them out (`written`, `round`), or gives evenly
 * spaced `rings`. Every scalar is text, as in the whole kit file.
 */
export const faceSchema = z
  .strictObject({
    'seen from': z.enum(['wire side', 'mating side']).describe('the side from which all of this is seen'),
    latch: edge.optional().describe('the edge with the latch, as seen'),
    key: edge.optional().describe('where there is no latch, the edge with the key'),
    ...numbering,
    blocks: z
      .array(z.strictObject(numbering))
      .optional()
      .describe('groups of positions, each with its own count'),
    stand: z
      .enum(['side by side', 'stacked'])
      .optional()
      .describe('how the blocks stand, side by side when not said'),
    written: texts
      .optional()
      .describe(
        'a text for each row: labels; -- is blocked, (B4) blocked with a label, .. a gap, . half a gap',
      ),
    round: texts
      .optional()
      .describe(
        'a text for each ring, outermost first: 5@10:30 is label 5 at half past ten from the key; 7@centre',
      ),
    rings: texts
      .optional()
      .describe('evenly spaced rings, outermost first: 8 from 12, 4 from 1:30, 1 in centre'),
    turn: z.enum(['clockwise', 'anticlockwise']).optional().describe('of rings, clockwise when not said'),
  })
  .describe('where the cavities of the connector are');

/** The `face` entry as it stands in a kit file. */
export type FaceForm = z.infer<typeof faceSchema>;
