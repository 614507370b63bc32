import type { DeviceElement, Job, Wire } from '@loomproof/netlist';
import {
  ampacity,
  awgLabel,
  bladeFuses,
  limitInVolt,
  protectorLimit,
  type RuleSet,
  ruleSets,
  type VoltageDropLimit,
  voltageDropLimits,
} from '../electrical/index.ts';

/** A limit with the text it comes from; or what has to be said before there is one. */
export type Limit =
  | { readonly kind: 'limit'; readonly value: number; readonly inclusive: boolean; readonly source: string }
  | { readonly kind: 'missing'; readonly what: string };

/** The rule set that the kit chose, or null. */
export function chosenRules(job: Job): RuleSet | null {
  return ruleSets.find(({ id }) => id === job.electrical.limits) ?? null;
}

/** Volts that a load may lose out and return. Limits of the kit itself come before those of a rule set. */
export function dropLimit(job: Job, load: DeviceElement, nominalVolt: number, ampere: number): Limit {
  const { own, limits } = job.electrical;
  const given = load.critical ? (own?.criticalDrop ?? null) : (own?.drop ?? null);
  if (own !== null && given !== null) {
    const value = given.unit === 'percent' ? (nominalVolt * given.value) / 100 : given.value;
    return { kind: 'limit', value, inclusive: true, source: own.source };
  }
  if (limits === null) return { kind: 'missing', what: 'which limits hold (`limits`)' };
  const which = load.critical ? 'critical drop' : 'drop';
  if (limits === 'own') return { kind: 'missing', what: `the limit \`${which}\`` };
  const published = publishedDrop(limits, load.critical, nominalVolt);
  const value = published === null ? null : limitInVolt(published, nominalVolt, ampere);
  // A value from memory decides nothing; whoever knows better says so as a limit of the kit.
  if (published === null || value === null || !published.confirmed)
    return {
      kind: 'missing',
      what: `\`${which}\` for ${nominalVolt} V: no published limit of ${limits} was read`,
    };
  return { kind: 'limit', value, inclusive: true, source: `${published.id}, ${published.source}` };
}

function publishedDrop(
  limits: 'small-craft' | 'aircraft',
  critical: boolean,
  nominalVolt: number,
): VoltageDropLimit | null {
  const byId = (id: string): VoltageDropLimit | null =>
    voltageDropLimits.find((one) => one.id === id) ?? null;
  if (limits === 'small-craft') return byId(critical ? 'V1' : 'V2');
  const aircraft = ['V6', 'V7', 'V8', 'V9'].map(byId);
  return aircraft.find((one) => one?.nominalVolt === nominalVolt) ?? null;
}

/** What a conductor may carry without end: as said of it, or by the table of the rule set. */
export function conductorCapacity(job: Job, wire: Wire): Limit {
  const { limits } = job.electrical;
  if (wire.capacityAmps !== null)
    return {
      kind: 'limit',
      value: wire.capacityAmps,
      inclusive: true,
      source: `capacity of ${wire.name} as the kit file says`,
    };
  const rules = chosenRules(job);
  if (rules === null)
    return limits === null
      ? { kind: 'missing', what: 'which limits hold (`limits`)' }
      : { kind: 'missing', what: `the capacity of ${wire.name}` };
  if (wire.size === null) return { kind: 'missing', what: `the size of ${wire.name}` };
  if (wire.insulationC === null) return { kind: 'missing', what: `the insulation rating of ${wire.name}` };
  // All tables are of copper; aluminium of the same size bears less.
  if (wire.material === null) return { kind: 'missing', what: `the material of ${wire.name}` };
  if (wire.material === 'aluminium')
    return {
      kind: 'missing',
      what: `the capacity of ${wire.name}: the tables of ${rules.title} are of copper`,
    };
  if (wire.temperatureC !== null && wire.temperatureC > wire.insulationC)
    return {
      kind: 'missing',
      what: `the capacity of ${wire.name}, which is said to be hotter (${wire.temperatureC} C) than its insulation bears (${wire.insulationC} C)`,
    };
  const table = rules.ampacityTables[0];
  const gauge = gaugeWithin(wire.size.mm2);
  const carries =
    table === undefined || gauge === null ? null : ampacity(table, awgLabel(gauge), wire.insulationC, 'any');
  if (table === undefined || gauge === null || carries === null)
    return {
      kind: 'missing',
      what: `the capacity of ${wire.name}: ${table?.title ?? 'no table'} has none for ${wire.size.raw} with ${wire.insulationC} C insulation`,
    };
  return { kind: 'limit', value: carries, inclusive: true, source: `${carries} A by ${table.title}` };
}

/** The largest rating of a fuse ahead of a conductor. */
export function fuseLimit(job: Job, wire: Wire, systemVolt: number): Limit {
  const capacity = conductorCapacity(job, wire);
  const rules = chosenRules(job);
  // What the kit says of the wire itself goes before the rules of the tables.
  if (capacity.kind === 'missing' || wire.capacityAmps !== null || rules === null) return capacity;
  const rule = rules.id === 'aircraft' ? 'O7' : systemVolt < 50 ? 'O4' : 'O5';
  const limit = protectorLimit({
    rule,
    ampacity: capacity.value,
    systemVolt,
    standardRatings: bladeFuses.map(({ ampere }) => ampere),
  });
  if (limit.kind === 'does-not-apply')
    return { kind: 'missing', what: `the capacity of ${wire.name} at ${systemVolt} V` };
  const rated = rules.overcurrentRules.find(({ id }) => id === rule);
  return {
    kind: 'limit',
    value: limit.ampere,
    inclusive: limit.inclusive,
    source: `${rule}, ${rated?.source ?? ''}; ${capacity.source}`,
  };
}

/** The largest gauge, by number the smallest wire, whose area is not above this one; the side that is safe. */
function gaugeWithin(mm2: number): number | null {
  for (let gauge = -3; gauge <= 40; gauge += 1) {
    // ASTM B258: 0.127 mm at gauge 36, in steps of the 39th root of 92.
    const area = (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;
    if (area <= mm2 * 1.0005) return gauge;
  }
  return null;
}

/** Millimetres of conductor allowed ahead of its first fuse: 33 CFR 183.455 says 7 in (O2) for boats. */
export function leadLimit(job: Job): Limit {
  const { own, limits } = job.electrical;
  if (own !== null && own.leadMm !== null)
    return { kind: 'limit', value: own.leadMm, inclusive: true, source: own.source };
  if (limits === 'small-craft')
    return { kind: 'limit', value: 7 * 25.4, inclusive: true, source: 'O2, 33 CFR 183.455' };
  return {
    kind: 'missing',
    what: 'how long a conductor may be ahead of its first fuse (`lead to protector`)',
  };
}

/** Whether a value keeps a limit. */
export function keeps(limit: Extract<Limit, { kind: 'limit' }>, value: number): boolean {
  const room = 1e-9 * Math.max(1, Math.abs(limit.value));
  return limit.inclusive ? value <= limit.value + room : value < limit.value - room;
}
