/**
 * The two-letter colour codes of IEC 60757, as read in GOST 28763-90, which adopts IEC 757:1983; and after
 * them `BG` (beige) and `TN` (tan), which that standard does not have: common practice, no source.
 */
export const colourCodes = [
  'BK',
  'BN',
  'RD',
  'OG',
  'YE',
  'GN',
  'BU',
  'VT',
  'GY',
  'WH',
  'PK',
  'GD',
  'TQ',
  'SR',
  'BG',
  'TN',
] as const;

/** One colour of a conductor. */
export type ColourCode = (typeof colourCodes)[number];

/** Codes and English words for one colour. The three-letter forms are common practice, no source. */
export const colourWords: ReadonlyMap<string, ColourCode> = new Map<string, ColourCode>([
  ...colourCodes.map((code): [string, ColourCode] => [code.toLowerCase(), code]),
  ['black', 'BK'],
  ['blk', 'BK'],
  ['brown', 'BN'],
  ['brn', 'BN'],
  ['red', 'RD'],
  ['orange', 'OG'],
  ['org', 'OG'],
  ['orn', 'OG'],
  ['yellow', 'YE'],
  ['yel', 'YE'],
  ['green', 'GN'],
  ['grn', 'GN'],
  ['blue', 'BU'],
  ['blu', 'BU'],
  ['violet', 'VT'],
  ['vio', 'VT'],
  ['purple', 'VT'],
  ['pur', 'VT'],
  ['grey', 'GY'],
  ['gray', 'GY'],
  ['gry', 'GY'],
  ['white', 'WH'],
  ['wht', 'WH'],
  ['pink', 'PK'],
  ['pnk', 'PK'],
  ['gold', 'GD'],
  ['turquoise', 'TQ'],
  ['silver', 'SR'],
  ['beige', 'BG'],
  ['tan', 'TN'],
]);

/**
 * Spellings that name more than one colour, or one only to those who know which old standard is meant:
 * the old codes are those of DIN 47002, the single letters are common practice, no source.
 */
export const unclearColours: ReadonlyMap<string, readonly ColourCode[]> = new Map<
  string,
  readonly ColourCode[]
>([
  ['b', ['BK', 'BN', 'BU']],
  ['g', ['GN', 'GY', 'GD']],
  ['l', ['BU']],
  ['n', ['BN', 'BK']],
  ['o', ['OG']],
  ['p', ['PK', 'VT']],
  ['r', ['RD']],
  ['s', ['SR', 'GY']],
  ['t', ['TN', 'TQ']],
  ['u', ['BU']],
  ['v', ['VT']],
  ['w', ['WH']],
  ['y', ['YE']],
  ['sw', ['BK']],
  ['br', ['BN']],
  ['rt', ['RD']],
  ['or', ['OG']],
  ['ge', ['YE']],
  ['bl', ['BU', 'BK']],
  ['vi', ['VT']],
  ['gr', ['GY', 'GN']],
  ['ws', ['WH']],
  ['rs', ['PK']],
  ['tk', ['TQ']],
]);
