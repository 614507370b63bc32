import type { Job } from '@loomproof/netlist';
import type { RawFinding } from './finding.ts';

const conductor = '(wires?|leads?|cables?|conductors?|cores?|one)';
const colourName =
  '(black|brown|red|orange|yellow|green|blue|violet|purple|gr[ea]y|white|pink|gold|silver|turquoise|beige|tan)';
const words = new RegExp(`\\b${colourName}([ /-]+(and )?${colourName})*[ -]+${conductor}\\b`, 'i');
const codes = new RegExp(
  `\\b(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR|BG|TN|GNYE)([/-][A-Z]{2})?[ -]+${conductor}\\b`,
);
const location = /\b(cavit(y|ies)|contacts?|pins?|studs?|positions?)\b/i;
/** Leads of the person's own tools are known by their colours and change with no build date. */
const ownTool = /\b(meter|probes?|jumpers?|test lead|test lamp)\b/i;

/**
 * Steps whose words have a person find a wire by its colour and by nothing else. The step itself always names its wire
 * and where that is, so only what its author wrote about it can do that: the note, the caution, the hold. Colours vary
 * between build dates; the cavity does not.
 */
export function judgeColourAlone(job: Job): readonly RawFinding[] {
  return job.steps.flatMap(({ number, note, caution, hold }) =>
    (
      [
        ['note', note],
        ['caution', caution],
        ['hold', hold],
      ] as const
    ).flatMap(([where, text]): readonly RawFinding[] => {
      if (text === null || !(words.test(text) || codes.test(text))) return [];
      if (ownTool.test(text) || location.test(text) || namesPlace(job, text)) return [];
      return [
        {
          kind: 'colour-alone',
          step: number,
          points: [text],
          witness: { is: 'state', what: `the ${where}`, expected: 'the cavity', found: 'a colour alone' },
          culprits: [number],
          keys: [],
        },
      ];
    }),
  );
}

/** Whether the text names a place by its address, as a word of its own. */
function namesPlace(job: Job, text: string): boolean {
  return job.places.some(({ address }) => {
    for (let at = text.indexOf(address); at >= 0; at = text.indexOf(address, at + 1)) {
      const around = `${text[at - 1] ?? ' '}${text[at + address.length] ?? ' '}`;
      if (!/[\p{L}\p{N}]/u.test(around)) return true;
    }
    return false;
  });
}
