import { type MadeSheets, sheetsOf } from './sheets-of.ts';

/** Texts that must come out of every document as nothing but text. */
export const hostileTexts = {
  script: '<script>window.broken=1</script>',
  attribute: `" onload="window.broken=2' x='`,
  turned: '\u202ekcab\u202c שלום',
  /** Wide signs are formulas to some spreadsheets. */
  wide: '＝1+1',
  formula: '=cmd|calc!A0',
  ending: '</script></style></svg>-->',
  /** A name may hold neither `=` nor `:`. */
  image: '<img src onerror>"&',
  /** Names that nothing breaks, in a step, a face and every table. */
  wire: `WIRE-${'ABCDEFGHIJ'.repeat(6)}`,
  connector: `K${'1234567890'.repeat(5)}`,
} as const;

/** The van's kit with such texts in its name, a caution, a note, a hold, a recognition, a wire and a part. */
export function hostileSheets(): MadeSheets {
  const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;
  return sheetsOf('van-beacon', (text) => {
    const changes: readonly (readonly [string, string])[] = [
      ['kit: side-door warning beacon', `kit: ${quoted(hostileTexts.script)}`],
      ['revision: B', `revision: ${quoted(hostileTexts.formula)}`],
      [
        '  - The door harness bends at the hinge. Work on the body side only.',
        `  - ${quoted(hostileTexts.attribute)}`,
      ],
      ['    buzzer return: {', `    ${quoted(hostileTexts.image)}: {`],
      ['TIE:   { is: tie }', `${quoted(hostileTexts.formula)}: { is: tie }`],
      ['CAP-W: 2, TIE: 2 }', `CAP-W: 2, ${quoted(hostileTexts.formula)}: 2 }`],
      ['buzzer stub@cut, with: TIE', `buzzer stub@cut, with: ${quoted(hostileTexts.formula)}`],
      ['buzzer far@cut, with: TIE', `buzzer far@cut, with: ${quoted(hostileTexts.formula)}`],
      ['early: door label without a dot', `early: ${quoted(hostileTexts.ending)}`],
      ['late: door label with a dot after the year', `late: ${quoted(hostileTexts.turned)}`],
      ['CAP-W: { is: cover', `${quoted(hostileTexts.wide)}: { is: cover`],
      ['parts: { TAP-M: 1, CAP-W: 2,', `parts: { TAP-M: 1, ${quoted(hostileTexts.wide)}: 2,`],
      [
        'caution: The door locks have no power from here on. Keep a door open.',
        `caution: ${quoted(hostileTexts.ending)}`,
      ],
      [
        'hold: The wire in cavity 4. Measure before you cut.',
        `hold: ${quoted(hostileTexts.script)}, note: ${quoted(hostileTexts.attribute)}`,
      ],
    ];
    const named = text
      .replaceAll(/\bbeacon feed\b/g, hostileTexts.wire)
      .replaceAll(/\bK10\b/g, hostileTexts.connector)
      .replaceAll(/with: CAP-W\b/g, `with: ${quoted(hostileTexts.wide)}`);
    return changes.reduce((done, [found, put]) => {
      if (!done.includes(found)) throw new Error(`the kit does not hold ${found}`);
      return done.replace(found, put);
    }, named);
  });
}
