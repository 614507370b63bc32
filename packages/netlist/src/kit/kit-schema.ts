import * as z from 'zod';
import { faceSchema } from '../face/index.ts';
import { wireMaterials, wireStrands } from '../harness/wire-data.ts';
import { textSchema as text, textsSchema as texts } from '../text/index.ts';

/*
 * The shape of a kit file after the values that differ by variant have been chosen. Every scalar is text: what a
 * cavity label or a colour means is decided later, where its place is still known, and never by the YAML reader.
 */

/** What covers a loose end that is bare. */
export const bareEnd = 'none';

const yesNo = z.enum(['yes', 'no', 'true', 'false']);
const zone = z.enum(['dry', 'wet']).describe('dry, or wet where water, fuel or road dirt reaches');
const source = z
  .enum(['always', 'switched', 'driven', 'never'])
  .describe('whether current can come out here: always live, behind a switch, driven by a module, or never');
const only = texts.optional().describe('axis=value conditions that must all hold for this row to exist');
const note = text.optional();
const namesOf = <T extends z.ZodType>(row: T) => z.record(z.string(), row);

const material = z.enum(wireMaterials).describe('of the conductor');
const strands = z
  .enum(wireStrands)
  .describe('which published text gives its resistance; formula: resistivity over area');
const joints = z.union([
  text,
  z.strictObject({
    crimp: text.optional(),
    contact: text.optional(),
    splice: text.optional(),
    stud: text.optional(),
  }),
]);
const electrical = z.strictObject({
  limits: z
    .enum(['small-craft', 'aircraft', 'own'])
    .optional()
    .describe('the published rules to judge by, or those given here; none is applied unasked'),
  'own limits': z
    .strictObject({
      source: text.describe('where these limits come from; shown wherever one of them is used'),
      drop: text
        .optional()
        .describe('volts or percent of the supply that may be lost out and return: 0.5 V, 5 %'),
      'critical drop': text.optional(),
      'fuse load': text
        .optional()
        .describe('part of its rating that a fuse may carry for long, such as 80 %'),
      'lead to protector': text.optional().describe('length of conductor allowed ahead of its first fuse'),
    })
    .optional(),
  material: material.optional(),
  strands: strands.optional(),
  temperature: text.optional(),
  'insulation rating': text.optional(),
  joints: joints.optional().describe('what one joint adds, such as 2 mohm, for all kinds or each'),
  'unlit below': text.optional(),
  note,
});

const strip = text.optional().describe('insulation to take off, by the data of its maker, such as 5 mm');

const part = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('terminal'),
    size: text.optional(),
    wires: text.optional().describe('how many wires one crimp may hold, 1 when not said'),
    ring: yesNo.optional().describe('a ring for a stud; it fits no cavity'),
    strip,
    note,
  }),
  z.strictObject({ is: z.literal('seal'), insulation: text.optional(), note }),
  z.strictObject({ is: z.literal('plug'), note }),
  z.strictObject({
    is: z.literal('splice'),
    size: text.optional(),
    ends: text.optional().describe('how many ends it takes, 2 when not said'),
    tube: z.enum(['built in', 'separate', 'none']).optional().describe('how it is covered'),
    zone: zone.optional().describe('the worst zone it may stand in once sealed'),
    strip,
    note,
  }),
  z.strictObject({
    is: z.literal('tap'),
    run: text.optional(),
    branch: text.optional(),
    zone: zone.optional(),
    note,
  }),
  z.strictObject({ is: z.literal('cover'), size: text.optional(), zone: zone.optional(), note }),
  z.strictObject({ is: z.literal('tube'), size: text.optional(), zone: zone.optional(), note }),
  z.strictObject({ is: z.literal('fuse'), rating: text.optional(), note }),
  z.strictObject({ is: z.literal('jumper'), note }),
  z.strictObject({ is: z.literal('tie'), note }),
  z.strictObject({ is: z.literal('tape'), note }),
]);

const element = z.strictObject({
  is: z
    .enum(['load', 'switch', 'diode', 'fuse', 'bridge', 'coil', 'drive'])
    .describe('a coil is a load that works contacts; a drive is an output that a module switches'),
  from: text.describe('pin; the anode of a diode; the supply side of a drive'),
  to: text.describe('pin; the cathode of a diode; the output of a drive'),
  name: text.optional(),
  resistance: text.optional().describe('with its unit, such as 12 ohm'),
  cold: text.optional().describe('resistance of a filament when cold, as an ohmmeter sees it'),
  power: text.optional().describe('of a load at its voltage, such as 21 W'),
  volts: text.optional().describe('the voltage at which the power is meant'),
  drop: text.optional().describe('forward drop of a diode, such as 0.7 V'),
  rating: text.optional().describe('of a fuse, such as 10 A'),
  fitted: yesNo.optional().describe('fuses only: whether a fuse is in the holder, yes when not said'),
  least: text
    .optional()
    .describe('drives only: the current below which the module takes the lamp for burnt out'),
  most: text.optional().describe('drives only: the largest current that the output may give'),
  critical: yesNo.optional().describe('loads only: the limit of critical circuits holds for it'),
  'unlit below': text
    .optional()
    .describe('loads only: volts that do nothing, such as 2 V; none when not said'),
  'worked by': text.optional().describe('switches only: the name of the coil that works it'),
  rest: z
    .enum(['open', 'closed'])
    .optional()
    .describe('a worked switch while its coil is off; open when not said'),
});

const connector = z.strictObject({
  cavities: texts.describe('labels: 1..12, or A1..A6, or a list'),
  device: yesNo.optional().describe('a device or module: its pins are built in and always have contact'),
  into: text.optional().describe('the connector it is plugged into'),
  pairing: z
    .record(z.string(), text)
    .optional()
    .describe('own label: label of the other half, where they differ'),
  plugged: yesNo.optional(),
  accepts: texts.optional().describe('terminal kinds that its cavities take'),
  sealed: yesNo.optional(),
  blanked: texts.optional().describe('cavities that hold a plug'),
  blocked: texts.optional().describe('positions moulded shut'),
  lock: z.enum(['closed', 'open', 'none']).optional().describe('the secondary lock that holds the terminals'),
  latch: z
    .enum(['closed', 'open', 'none'])
    .optional()
    .describe('the position latch that holds the connector'),
  zone: zone.optional(),
  source: z
    .record(z.string(), source)
    .optional()
    .describe('cavity labels: whether current can come out there'),
  elements: z.array(element).optional().describe('what joins the pins of a device inside it'),
  face: faceSchema.optional(),
  only,
  note,
});

/** One row a conductor, which tables hold by the hundred thousand and which is therefore also checked by itself. */
export const wireSchema = z.strictObject({
  from: text,
  to: text,
  size: text.optional(),
  insulation: text.optional().describe('outer diameter over the insulation'),
  colour: text.optional(),
  length: text.optional(),
  'from terminal': text.optional(),
  'to terminal': text.optional(),
  'from seal': text.optional(),
  'to seal': text.optional(),
  'from cover': text.optional().describe('what covers a loose end as found, or none where it is bare'),
  'to cover': text.optional(),
  'from strip': strip,
  'to strip': strip,
  zone: zone.optional(),
  material: material.optional(),
  strands: strands.optional(),
  temperature: text.optional().describe('of the conductor at work, such as 60 C'),
  'insulation rating': text.optional().describe('the temperature that its insulation bears, such as 105 C'),
  capacity: text.optional().describe('what it may carry by its own data sheet, such as 8 A'),
  flex: yesNo.optional().describe('it bends in use: no splice and no tap on it'),
  function: text.optional(),
  only,
  note,
});

const splice = z.strictObject({
  with: text.optional(),
  sealed: yesNo.optional(),
  zone: zone.optional(),
  only,
  note,
});
const stud = z.strictObject({
  chassis: yesNo.optional(),
  holds: text.optional().describe('how many rings it may carry'),
  source: source.optional(),
  zone: zone.optional(),
  only,
  note,
});
const tap = z.strictObject({
  on: text.describe('the wire that it is on'),
  at: text.describe('where on it, measured from one of its ends: 120 mm from K10:9'),
  with: text.optional(),
  zone: zone.optional(),
  cover: text.optional().describe('where the tap is off again: what covers the wound that it left, or none'),
  only,
  note,
});
const boundary = z.strictObject({
  source: source.optional(),
  distinct: yesNo.optional().describe('beyond it nothing joins the other boundaries'),
  zone: zone.optional(),
  only,
  note,
});

const special = z.strictObject({
  is: z.enum(['restraint system', 'safety loop', 'bus pair', 'sensor', 'high voltage']),
  wires: texts.describe('its conductors; the two of a bus pair, more where it branches'),
  released: z
    .strictObject({ by: text, document: text })
    .optional()
    .describe('who allows work on it, and where'),
  'stub limit': text.optional().describe('bus pairs: the longest branch, as the network at hand allows'),
  'length limit': text.optional().describe('bus pairs: the longest run between its ends'),
  terminators: texts.optional().describe('bus pairs: the names of the loads at its two ends'),
  only,
  note,
});

const harness = {
  connectors: namesOf(connector).optional(),
  studs: namesOf(stud).optional(),
  splices: namesOf(splice).optional(),
  wires: namesOf(wireSchema).optional(),
  'wire table': texts.optional().describe('CSV files with one row a wire, beside this file'),
  zone: zone.optional().describe('the zone of whatever says none itself'),
};

const stock = z.strictObject({
  ...harness,
  supplies: namesOf(
    z.strictObject({
      at: texts,
      return: text
        .optional()
        .describe('its negative pole; chassis metal where the kit has any and none is said'),
      volts: text.optional(),
      resistance: text.optional().describe('inside it, such as 10 mohm'),
      only,
      note,
    }),
  ).optional(),
  special: namesOf(special).optional().describe('circuits that nobody touches or probes without a release'),
  boundaries: namesOf(boundary).optional(),
  taps: namesOf(tap)
    .optional()
    .describe('taps as found: each is on one wire, and one other wire comes from it'),
});
const bag = z.strictObject({
  ...harness,
  parts: z.record(z.string(), text).optional().describe('part name: how many are in the bag'),
});

const stepExtras = {
  only,
  note,
  caution: text.optional(),
  hold: text.optional().describe('stop, and check this before the step is done'),
};
const step = <K extends string, S extends z.ZodRawShape>(kind: K, shape: S) =>
  z.strictObject({ do: z.literal(kind), ...shape, ...stepExtras });

const workStep = z.discriminatedUnion('do', [
  step('disconnect', { supply: text }),
  step('reconnect', { supply: text }),
  step('prove dead', { at: text }),
  step('unplug', { connector: text }),
  step('plug', { connector: text }),
  step('open lock', { connector: text }),
  step('close lock', { connector: text }),
  step('open latch', { connector: text }),
  step('close latch', { connector: text }),
  step('cut', { wire: text, at: text, leaves: z.tuple([text, text]), zone: zone.optional() }),
  step('strip', { end: text }),
  step('slide tube', { end: text, with: text }),
  step('join', { ends: z.array(text).min(2), with: text, as: text, zone: zone.optional() }),
  step('seal', { joint: text }),
  step('tap', { run: text, at: text, branch: text, with: text, as: text, zone: zone.optional() }),
  step('remove tap', { tap: text }),
  step('fit terminal', { ends: texts, with: text, seal: text.optional() }),
  step('withdraw', { cavity: text }),
  step('insert', { end: text, cavity: text }),
  step('attach', { end: text, stud: text }),
  step('detach', { end: text }),
  step('cover', { end: text, with: text }),
  step('tie back', { end: text, with: text.optional() }),
  step('fasten', { wire: text, with: text.optional() }),
  step('fit plug', { cavity: text, with: text }),
  step('remove plug', { cavity: text }),
  step('fit seal', { end: text, with: text }),
  step('remove seal', { end: text }),
  step('fit fuse', { fuse: text, with: text }),
  step('remove fuse', { fuse: text }),
  step('place', { device: text }),
  step('interpose', { at: text, near: text, far: text }),
  step('fit jumper', { between: z.tuple([text, text]), as: text, serves: text, with: text.optional() }),
  step('remove jumper', { jumper: text }),
  step('remove off-cut', { wire: text }),
]);

const circuit = z.union([z.array(text).min(1), z.strictObject({ joins: z.array(text).min(1), only, note })]);

const wanted = z.strictObject({
  circuits: namesOf(circuit)
    .optional()
    .describe('name: the cavities that shall be one net with nothing else on it'),
  additions: namesOf(
    z.strictObject({ to: text, add: texts.optional(), take: texts.optional(), only, note }),
  ).optional(),
  moves: z.array(z.strictObject({ from: text, to: text, only, note })).optional(),
  retired: z
    .array(
      z.union([z.strictObject({ wire: text, only, note }), z.strictObject({ cavity: text, only, note })]),
    )
    .optional(),
  stubs: z
    .array(
      z.strictObject({ of: text, at: text, is: z.enum(['live', 'dead']), why: text.optional(), only, note }),
    )
    .optional(),
  powered: z
    .record(z.string(), texts)
    .optional()
    .describe(
      'load: always, never, or the switches and drives that power it, each alternative as `A + not B`',
    ),
  'may tie': z
    .array(z.array(text).min(2))
    .optional()
    .describe('supplies and drives that a closed switch may join, such as two batteries by a split relay'),
  apart: z.array(z.array(text).min(2)).optional(),
  'left unplugged': texts.optional(),
  interposed: z
    .array(z.strictObject({ at: text, near: text, far: text, only, note }))
    .optional()
    .describe('an adapter between a connector and its other half: near plugs onto `at`, far onto that half'),
  deviations: z
    .array(z.strictObject({ allows: text, at: text.optional(), by: text, why: text, only }))
    .optional(),
  agree: z
    .strictObject({
      axis: text,
      between: z.tuple([text, text]),
      pairs: z.record(z.string(), text).optional().describe('name in the first: name in the second'),
      differ: texts.optional().describe('cavities, as named in the first, that the two declare to differ'),
    })
    .optional(),
  changed: texts
    .optional()
    .describe('fuses, wires or cavities that the kit may change though no net of theirs is named'),
  'after table': texts.optional().describe('CSV: the pin table as drawn after the work, a second witness'),
});

const before = z
  .strictObject({
    kit: text.describe('another kit file in this folder or below'),
    digest: text.describe('the digest that `loomproof prove` prints for that kit'),
    variant: texts.optional().describe('axis=value conditions that pick one variant of it'),
    note,
  })
  .describe('the stock harness is what another kit leaves; in place of `stock`');

/** The kit file of one variant; the published JSON Schema is made from it by `kitJsonSchema`. */
export const kitSchema = z.strictObject({
  kit: text,
  revision: text,
  note,
  cautions: z.array(text).optional(),
  rules: texts.optional().describe('rule sets that the kit chooses: one splice per segment'),
  variants: z.record(z.string(), z.union([z.array(text).min(1), z.record(z.string(), text)])).optional(),
  'not built': z.array(texts).optional().describe('combinations of axis=value that do not exist'),
  electrical: electrical.optional(),
  parts: namesOf(part).optional(),
  before: before.optional(),
  stock: stock.optional(),
  bag: bag.optional(),
  work: z.array(workStep),
  wanted,
});
