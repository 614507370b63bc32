import { quoteText } from '../text/index.ts';
import type { Colour } from './colour.ts';
import { type ColourCode, colourWords, unclearColours } from './colour-names.ts';
import type { Parsed } from './parsed.ts';
import { type Problem, problem } from './problem.ts';

const longestColour = 100;
const mostColours = 4;

const stripeWords: ReadonlySet<string> = new Set(['stripe', 'stripes', 'tracer', 'tracers', 'band', 'bands']);
const joiningWords: ReadonlySet<string> = new Set(['with', 'and', 'a']);
const shades: ReadonlySet<string> = new Set(['light', 'lt', 'pale', 'dark', 'dk']);
const example = 'write IEC 60757 codes, base colour first: `RD`, or `RD/BU` for red with a blue stripe';

function unknownWord(word: string): Problem {
  const candidates = unclearColours.get(word.toLowerCase());
  if (candidates === undefined) return problem(`unknown colour ${quoteText(word)}`, example);
  const codes = candidates.map((code) => `\`${code}\``).join(' or ');
  return problem(
    `colour ${quoteText(word)} is not clear`,
    `it may stand for ${codes}: write the IEC 60757 code`,
  );
}

/** The codes of one word: a name, a code, or codes joined without separator such as `RDBU`. */
function codesOfWord(word: string): readonly ColourCode[] | Problem {
  const single = colourWords.get(word.toLowerCase());
  if (single !== undefined) return [single];
  if (word.length % 2 !== 0 || word.length < 4) return unknownWord(word);
  const codes: ColourCode[] = [];
  for (let at = 0; at < word.length; at += 2) {
    const code = colourWords.get(word.slice(at, at + 2).toLowerCase());
    if (code === undefined) return unknownWord(word);
    codes.push(code);
  }
  return codes;
}

/** The colours of words without stripe words, in the order written. */
function codesOfWords(words: readonly string[]): readonly ColourCode[] | Problem {
  const codes: ColourCode[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (joiningWords.has(word.toLowerCase())) continue;
    if (shades.has(word.toLowerCase())) {
      // IEC 60757 counts light blue as BU. It has no code for any other shade, and two shades of green in
      // one harness are two colours, so none is dropped in silence.
      if (colourWords.get(words[at + 1]?.toLowerCase() ?? '') === 'BU') continue;
      return problem(
        `IEC 60757 has no code for the shade ${quoteText(word)} of ${quoteText(words[at + 1] ?? '')}`,
        'write the code of the plain colour, and the shade in a note',
      );
    }
    const found = codesOfWord(word);
    if ('ok' in found) return found;
    codes.push(...found);
  }
  return codes;
}

/** Puts the base colour first: after `red stripe on black` it is the last that was named. */
function baseFirst(words: readonly string[]): readonly ColourCode[] | Problem {
  const stripeAt = words.findIndex((word) => stripeWords.has(word.toLowerCase()));
  if (stripeAt === -1) return codesOfWords(words);
  const before = words.slice(0, stripeAt);
  const after = words.slice(stripeAt + 1);
  const colours = codesOfWords(before);
  if ('ok' in colours) return colours;
  // `red with black stripe` names the base; `black stripe` alone, or `red stripe black`, does not.
  if (after.length === 0 && colours.length > 1) return colours;
  if (after[0]?.toLowerCase() === 'on' && colours.length > 0) {
    const base = codesOfWords(after.slice(1));
    if ('ok' in base) return base;
    if (base.length > 0) return [...base, ...colours];
  }
  return problem(`it is not clear which colour is the base in ${quoteText(words.join(' '))}`, example);
}

/**
 * Reads the colour of a conductor: IEC 60757 codes alone or joined (`RD`, `RD/BU`, `RD-BK`, `RDBU`,
 * `GNYE`) or English words (`red/blue`, `red with black stripe`, `black stripe on red`), in any case.
 *
 * The order written is kept, base colour first. Single letters and the codes of older standards are
 * refused, because they stand for more than one colour.
 *
 * @param raw - the text as written
 * @returns the colour, or what is unclear about it
 */
export function parseColour(raw: string): Parsed<Colour> {
  if (raw.length > longestColour) return problem(`${quoteText(raw)} is too long for a colour`, example);
  if (raw.includes('+')) {
    return problem(`${quoteText(raw)} lists the colours of several cores`, 'give each core a row of its own');
  }
  const words = raw.split(/[\s/\-_,.|&]+/u).filter((word) => word !== '');
  const codes = baseFirst(words);
  if ('ok' in codes) return codes;
  if (codes.length === 0) return problem('no colour is given', example);
  if (codes.length > mostColours) {
    return problem(
      `${quoteText(raw)} names ${codes.length} colours, a conductor has at most ${mostColours}`,
      example,
    );
  }
  if (new Set(codes).size < codes.length) {
    return problem(`${quoteText(raw)} names one colour twice`, example);
  }
  return { ok: true, value: { codes, raw } };
}
