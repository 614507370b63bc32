import type {
  ConnectorRow,
  ElementRow,
  KitDocument,
  PartRow,
  SourceText,
  WireRow,
  ZoneText,
} from './kit-document.ts';
import { readLabels } from './read-measure.ts';

/** A zone, or null where none was said. */
export type Zone = ZoneText | null;

/** What is known of a cavity, stud or boundary and never changes. */
export type PlaceFacts = {
  readonly address: string;
  readonly is: 'cavity' | 'pin' | 'stud' | 'boundary';
  readonly connector: string | null;
  readonly source: SourceText | 'unknown';
  readonly chassis: boolean;
  readonly holds: number | null;
  readonly zone: Zone;
  readonly blocked: boolean;
  readonly fromKit: boolean;
};

/** What is known of a connector and never changes. */
export type ConnectorFacts = {
  readonly name: string;
  readonly row: ConnectorRow;
  readonly device: boolean;
  readonly fromKit: boolean;
  readonly places: readonly string[];
  readonly other: string | null;
  readonly pluggedAtFirst: boolean;
};

/** What is known of a conductor and never changes. */
export type WireFacts = {
  readonly name: string;
  readonly row: WireRow;
  readonly fromKit: boolean;
  readonly zone: Zone;
};

/** Everything about the harness and the bag that no step changes. */
export type HarnessFacts = {
  readonly kit: KitDocument;
  readonly parts: ReadonlyMap<string, PartRow>;
  readonly places: ReadonlyMap<string, PlaceFacts>;
  readonly connectors: ReadonlyMap<string, ConnectorFacts>;
  readonly wires: ReadonlyMap<string, WireFacts>;
  readonly splices: ReadonlyMap<
    string,
    { with: string | null; sealed: boolean; fromKit: boolean; zone: Zone }
  >;
  readonly elements: readonly { name: string; row: ElementRow; device: string }[];
  /** The cavity that faces a cavity when the two halves are plugged. */
  readonly facing: ReadonlyMap<string, string>;
  readonly supplies: ReadonlyMap<string, readonly string[]>;
};

/** Reads a kit's stock harness and bag. */
export function readFacts(kit: KitDocument): HarnessFacts {
  const sections = [
    { rows: kit.stock, fromKit: false },
    { rows: kit.bag ?? {}, fromKit: true },
  ];
  const halves = new Map<string, { other: string; row: ConnectorRow; owner: string }>();
  for (const { rows } of sections) {
    for (const [name, row] of rows.connectors ?? []) {
      if (row.into === undefined) continue;
      halves.set(name, { other: row.into, row, owner: name });
      halves.set(row.into, { other: name, row, owner: name });
    }
  }
  const places = new Map<string, PlaceFacts>();
  const connectors = new Map<string, ConnectorFacts>();
  const wires = new Map<string, WireFacts>();
  const splices = new Map<string, { with: string | null; sealed: boolean; fromKit: boolean; zone: Zone }>();
  const elements: { name: string; row: ElementRow; device: string }[] = [];
  const facing = new Map<string, string>();
  for (const { rows, fromKit } of sections) {
    const zoneHere = rows.zone ?? null;
    for (const [name, row] of rows.connectors ?? []) {
      const device = row.device === 'yes';
      const half = halves.get(name);
      const labels = readLabels(row.cavities);
      const said = new Map<string, SourceText>();
      for (const [key, source] of row.source ?? [])
        for (const label of readLabels([key])) said.set(label, source);
      // Pins of a device may be anything unless the inside is drawn; a plain half passes on what its other half carries.
      const otherwise = (device ? row.elements !== undefined : half !== undefined) ? 'never' : 'unknown';
      for (const label of labels) {
        places.set(`${name}:${label}`, {
          address: `${name}:${label}`,
          is: device ? 'pin' : 'cavity',
          connector: name,
          source: said.get(label) ?? otherwise,
          chassis: false,
          holds: null,
          zone: row.zone ?? zoneHere,
          blocked: readLabels(row.blocked ?? []).includes(label),
          fromKit,
        });
      }
      for (const [index, element] of (row.elements ?? []).entries()) {
        elements.push({
          name: element.name ?? `${name} ${element.is} ${index + 1}`,
          row: element,
          device: name,
        });
      }
      if (row.into !== undefined) {
        for (const label of labels) {
          const theirs = row.pairing === undefined ? label : row.pairing.get(label);
          if (theirs === undefined) continue;
          facing.set(`${name}:${label}`, `${row.into}:${theirs}`);
          facing.set(`${row.into}:${theirs}`, `${name}:${label}`);
        }
      }
      connectors.set(name, {
        name,
        row,
        device,
        fromKit,
        places: labels.map((label) => `${name}:${label}`),
        other: half?.other ?? null,
        pluggedAtFirst: false,
      });
    }
    for (const [name, row] of rows.studs ?? []) {
      places.set(name, {
        address: name,
        is: 'stud',
        connector: null,
        source: row.source ?? 'unknown',
        chassis: row.chassis === 'yes',
        holds: row.holds === undefined ? null : Number(row.holds),
        zone: row.zone ?? zoneHere,
        blocked: false,
        fromKit,
      });
    }
    for (const [name, row] of rows.wires ?? [])
      wires.set(name, { name, row, fromKit, zone: row.zone ?? zoneHere });
    for (const [name, row] of rows.splices ?? []) {
      splices.set(name, {
        with: row.with ?? null,
        sealed: row.sealed !== 'no',
        fromKit,
        zone: row.zone ?? zoneHere,
      });
    }
  }
  for (const [name, row] of kit.stock.boundaries ?? []) {
    places.set(name, {
      address: name,
      is: 'boundary',
      connector: null,
      source: row.source ?? 'unknown',
      chassis: false,
      holds: null,
      zone: kit.stock.zone ?? null,
      blocked: false,
      fromKit: false,
    });
  }
  for (const [name, facts] of connectors) {
    const half = halves.get(name);
    if (half === undefined) continue;
    const loose = facts.fromKit || connectors.get(half.other)?.fromKit === true;
    connectors.set(name, { ...facts, pluggedAtFirst: !loose && half.row.plugged !== 'no' });
  }
  return {
    kit,
    parts: kit.parts ?? new Map(),
    places,
    connectors,
    wires,
    splices,
    elements,
    facing,
    supplies: new Map([...(kit.stock.supplies ?? [])].map(([name, row]) => [name, row.at])),
  };
}
