import type { Published } from '../wire/published.ts';

/** A blade fuse as it is told by its colour. */
export interface BladeFuse extends Published {
  /** `medium-or-miniature`: ISO 8820-3 types C and F. `high-current`: type E. */
  readonly type: 'medium-or-miniature' | 'high-current';
  readonly ampere: number;
  readonly colour: string;
}

/** Ratings and colours of blade fuses. The colours were read in secondary charts, not in ISO 8820-3 or SAE J1284. */
export const bladeFuses: readonly BladeFuse[] = [
  {
    type: 'medium-or-miniature',
    ampere: 0.5,
    colour: 'dark blue',
    source: '"Automotive fuse ID: color chart", onallcylinders.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 1,
    colour: 'black',
    source: '"Automotive fuse ID: color chart", onallcylinders.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 2,
    colour: 'grey',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 3,
    colour: 'violet',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 4,
    colour: 'pink',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 5,
    colour: 'tan (light brown)',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 7.5,
    colour: 'brown',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 10,
    colour: 'red',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 15,
    colour: 'blue',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 20,
    colour: 'yellow',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 25,
    colour: 'clear / white (natural)',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 30,
    colour: 'green',
    source:
      '"Automotive fuse ID: color chart", onallcylinders.com; "Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 35,
    colour: 'aqua (blue-green)',
    source: '"Automotive fuse ID: color chart", onallcylinders.com',
    confirmed: true,
  },
  {
    type: 'medium-or-miniature',
    ampere: 40,
    colour: 'orange (amber)',
    source: '"Fuse colors" (DIN 72581), fuselayouts.com',
    confirmed: true,
  },
  { type: 'high-current', ampere: 20, colour: 'yellow', source: 'from memory', confirmed: false },
  { type: 'high-current', ampere: 25, colour: 'grey', source: 'from memory', confirmed: false },
  { type: 'high-current', ampere: 30, colour: 'green', source: 'from memory', confirmed: false },
  { type: 'high-current', ampere: 35, colour: 'brown', source: 'from memory', confirmed: false },
  {
    type: 'high-current',
    ampere: 40,
    colour: 'orange (amber)',
    source: '"Fuse color code chart", procarmanuals.com',
    confirmed: true,
  },
  {
    type: 'high-current',
    ampere: 50,
    colour: 'red',
    source: '"Fuse color code chart", procarmanuals.com',
    confirmed: true,
  },
  { type: 'high-current', ampere: 60, colour: 'blue', source: 'from memory', confirmed: false },
  { type: 'high-current', ampere: 70, colour: 'tan', source: 'from memory', confirmed: false },
  { type: 'high-current', ampere: 80, colour: 'clear (natural)', source: 'from memory', confirmed: false },
  { type: 'high-current', ampere: 100, colour: 'violet', source: 'from memory', confirmed: false },
];
