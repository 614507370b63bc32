/** A device between two studs: its kind, name and what else the kit says of it. */
export type StudDevice = readonly [kind: string, name: string, from: string, to: string, more?: string];

/** What differs between two kits of {@link studKit}. */
export interface StudKit {
  /** Each net is a stud; `BAT` is the supply and `GND` its return. */
  readonly nets: readonly string[];
  readonly stock: readonly StudDevice[];
  /** Wires of the stock harness between studs: name, from, to, and what is said of it in place of `ofWires`. */
  readonly wires?: readonly (readonly [string, string, string, string?])[];
  /** Devices that the kit brings, each with two leads to studs. */
  readonly kit?: readonly StudDevice[];
  /** Wires that the kit brings, likewise. */
  readonly links?: readonly (readonly [string, string, string, string?])[];
  /** `load: ways`, one a line of `powered`. */
  readonly powered?: readonly string[];
  /** Further lines under `wanted`. */
  readonly wanted?: readonly string[];
  /** Further sections of the file, such as `electrical`. */
  readonly sections?: readonly string[];
  readonly volts?: string;
  /** What is said of every wire beyond its ends and size, such as `length: 1 m`. */
  readonly ofWires?: string;
}

/** A kit of devices on studs, which does exactly what it wants with its copper; only its function is in question. */
export function studKit(kit: StudKit): string {
  const device = ([kind, name, , , more]: StudDevice): string =>
    `    K ${name}: { cavities: 1..2, into: ${name} }\n    ${name}: { device: yes, cavities: 1..2, elements: [{ is: ${kind}, name: ${name}, from: 1, to: 2${more === undefined ? '' : `, ${more}`} }] }\n`;
  const more = kit.ofWires === undefined ? '' : `, ${kit.ofWires}`;
  const brought = kit.kit ?? [];
  const links = kit.links ?? [];
  // One statement for each net that grows: what the links join, and what the kit hangs on it.
  const headOf = new Map<string, string>();
  const head = (net: string): string => headOf.get(net) ?? net;
  for (const [, from, to] of [...(kit.wires ?? []), ...links]) {
    const [first, second] = [head(from), head(to)];
    for (const net of ['BAT', 'GND', ...kit.nets]) if (head(net) === second) headOf.set(net, first);
  }
  const added = new Map<string, string[]>();
  const add = (net: string, ...places: readonly string[]): void => {
    added.set(head(net), [...(added.get(head(net)) ?? []), ...places]);
  };
  for (const [, name, from, to] of brought) {
    add(from, `K ${name}:1`);
    add(to, `K ${name}:2`);
  }
  for (const [, , to] of links) {
    const hanging = kit.stock.flatMap(([, name, from, back]) => [
      ...(from === to ? [`K ${name}:1`] : []),
      ...(back === to ? [`K ${name}:2`] : []),
    ]);
    add(to, to, ...hanging);
  }
  const lines: string[] = [
    'kit: devices on studs',
    'revision: A',
    ...(kit.sections ?? []),
    'parts: { R: { is: terminal, size: 0.1..50 mm2, ring: yes } }',
    'stock:',
    '  zone: dry',
    `  supplies: { battery: { at: BAT, return: GND, volts: ${kit.volts ?? '12 V'} } }`,
    '  studs:',
    '    BAT: { source: always }',
    ...['GND', ...kit.nets].map((net) => `    ${net}: { source: never }`),
    '  connectors:',
    ...kit.stock.map((one) => device(one).trimEnd()),
    '  wires:',
    ...kit.stock.flatMap(([, name, from, to]) => [
      `    ${name} a: { from: ${from}, to: K ${name}:1, size: 1 mm2${more} }`,
      `    ${name} b: { from: K ${name}:2, to: ${to}, size: 1 mm2${more} }`,
    ]),
    ...(kit.wires ?? []).map(
      ([name, from, to, own]) =>
        `    ${name}: { from: ${from}, to: ${to}, size: 1 mm2${own === undefined ? more : `, ${own}`} }`,
    ),
    'bag:',
    '  zone: dry',
    ...(brought.length === 0 ? [] : ['  connectors:', ...brought.map((one) => device(one).trimEnd())]),
    '  wires:',
    ...brought.flatMap(([, name]) => [
      `    ${name} a: { from: ring a, to: K ${name}:1, size: 1 mm2${more}, from terminal: R }`,
      `    ${name} b: { from: K ${name}:2, to: ring b, size: 1 mm2${more}, to terminal: R }`,
    ]),
    ...links.map(
      ([name, , , own]) =>
        `    ${name}: { from: one, to: two, size: 1 mm2${own === undefined ? more : `, ${own}`}, from terminal: R, to terminal: R }`,
    ),
    'work:',
    '  - { do: disconnect, supply: battery }',
    ...brought.flatMap(([, name, from, to]) => [
      `  - { do: attach, end: ${name} a@ring a, stud: ${from} }`,
      `  - { do: attach, end: ${name} b@ring b, stud: ${to} }`,
      `  - { do: place, device: ${name} }`,
      `  - { do: plug, connector: K ${name} }`,
    ]),
    ...links.flatMap(([name, from, to]) => [
      `  - { do: attach, end: ${name}@one, stud: ${from} }`,
      `  - { do: attach, end: ${name}@two, stud: ${to} }`,
    ]),
    '  - { do: reconnect, supply: battery }',
    'wanted:',
    '  additions:',
    ...[...added].map(([net, places]) => `    at ${net}: { to: ${net}, add: [${places.join(', ')}] }`),
    ...((kit.powered ?? []).length === 0
      ? []
      : ['  powered:', ...(kit.powered ?? []).map((one) => `    ${one}`)]),
    ...(kit.wanted ?? []).map((one) => `  ${one}`),
  ];
  return `${lines.join('\n')}\n`;
}
