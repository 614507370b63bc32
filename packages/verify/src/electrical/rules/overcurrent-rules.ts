import type { Published } from '../wire/published.ts';

/** A published rule on fuses and breakers. */
export interface OvercurrentRule extends Published {
  readonly id: string;
  readonly rule: string;
  readonly appliesTo: string;
}

/** The rules known to this program; `protectorLimit` computes with O4 to O7, the others are text. */
export const overcurrentRules: readonly OvercurrentRule[] = [
  {
    id: 'O1',
    rule: 'each ungrounded current-carrying conductor protected by a fuse or manually reset trip-free breaker',
    appliesTo: 'boats',
    source: '33 CFR 183.455',
    confirmed: true,
  },
  {
    id: 'O2',
    rule: 'protector at the source of power; else within 7 in along the conductor',
    appliesTo: 'boats',
    source: '33 CFR 183.455',
    confirmed: true,
  },
  {
    id: 'O3',
    rule: 'else within 40 in if sheathed or enclosed the whole way',
    appliesTo: 'boats',
    source: '33 CFR 183.455',
    confirmed: true,
  },
  {
    id: 'O4',
    rule: 'circuits below 50 V: protector rating at most 150 % of Table 5 amperage',
    appliesTo: 'boats, < 50 V',
    source: '33 CFR 183.455',
    confirmed: true,
  },
  {
    id: 'O5',
    rule: '50 V and above: protector rating at most 100 % of Table 5; next larger standard size allowed up to 150 %',
    appliesTo: 'boats, >= 50 V',
    source: '33 CFR 183.455',
    confirmed: true,
  },
  {
    id: 'O6',
    rule: 'conductor protected at its capacity; next larger standard device allowed if not above 150 %',
    appliesTo: 'small passenger vessels',
    source: '46 CFR 183.380',
    confirmed: true,
  },
  {
    id: 'O7',
    rule: 'breaker must open before the wire rating or the sum of the loads is exceeded, whichever is lowest; wire must carry more than the protector rating continuously',
    appliesTo: 'aircraft',
    source: 'FAA AC 43.13-1B para 11-48',
    confirmed: true,
  },
  {
    id: 'O8',
    rule: 'smaller downstream conductor needs no own protector if the upstream device also protects it',
    appliesTo: 'ships',
    source: '46 CFR 111.50-5(a)(3)',
    confirmed: true,
  },
  {
    id: 'O9',
    rule: 'conductors run singly at least 16 AWG; in a multiconductor sheath at least 18 AWG; 18 AWG not out of sheath more than 30 in',
    appliesTo: 'boats',
    source: '33 CFR 183.425(d)-(f)',
    confirmed: true,
  },
  {
    id: 'O10',
    rule: 'separate conductors longer than 200 mm at least 1 mm2; in a multi-conductor sheath at least 0.75 mm2 and at most 800 mm out of sheath',
    appliesTo: 'small craft d.c.',
    source: 'ISO 10133:2012 clause 7.7 excerpt, mealir.com',
    confirmed: true,
  },
  {
    id: 'O11',
    rule: 'continuous load at most 75 to 80 % of fuse rating',
    appliesTo: 'vehicle practice',
    source: 'from memory',
    confirmed: false,
  },
];
