import type { Job } from '@loomproof/netlist';

const colourWord =
  /\b(black|brown|red|orange|yellow|green|blue|violet|purple|gr[ea]y|white|pink|turquoise|beige|tan)\b(?:[ /-]\w+)?\s+(wire|lead|cable|conductor|core|one)\b/i;
const colourCode =
  /\b(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|TQ|GNYE)(\/[A-Z]{2})?\s+(wire|lead|cable|conductor|core|one)\b/;
const place = /\bcavity\b|\bcontact\b|\bpin\b|\bstud\b/i;

/**
 * Steps whose words tell a person to find a wire by its colour and by nothing else. The step itself always names its
 * wire, so only what its author wrote about it can do that: the note, the caution, the hold.
 *
 * @returns a sentence for each such text
 */
export function colourAlone(job: Job): readonly string[] {
  const addresses = job.places.map(({ address }) => address);
  return job.steps.flatMap(({ number, note, caution, hold }) =>
    [note, caution, hold].flatMap((text) => {
      if (text === null || !(colourWord.test(text) || colourCode.test(text))) return [];
      if (place.test(text) || addresses.some((address) => text.includes(address))) return [];
      return [
        `step ${number} names a wire by its colour alone: "${text}"; name the cavity, since colours vary between build dates`,
      ];
    }),
  );
}
