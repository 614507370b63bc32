/*
 * The JSON that a proof is printed as, read anew: only what the checker walks.
 */
import type { Made } from './harness-record.ts';

/** One hop of a path. */
export type HopJson = {
  readonly by: string;
  readonly from: string;
  readonly to: string;
  readonly name: string | null;
  readonly colour: string | null;
  readonly size: string | null;
  readonly made: Made;
};

/** How a source is reached. */
export type ReachJson = {
  readonly source: string;
  readonly certain: boolean;
  readonly path: readonly HopJson[];
};

/** Two points that should not meet. */
export type JoinJson = {
  readonly between: readonly [string, string];
  readonly path: readonly HopJson[];
  readonly step: number | null;
  readonly cause: 'step' | 'kit as made' | 'never parted';
};

/** A net that is not whole. */
export type OpenJson = {
  readonly circuit: string | null;
  readonly fragments: readonly {
    readonly places: readonly string[];
    readonly stops: readonly {
      readonly end: string;
      readonly state: string;
      readonly step: number | null;
    }[];
  }[];
  readonly missing: readonly (readonly [string, string])[];
  readonly step: number | null;
  readonly cause: 'step' | 'never joined';
};

/** Evidence of every kind. */
export type WitnessJson =
  | { readonly is: 'nets'; readonly joins: readonly JoinJson[]; readonly opens: readonly OpenJson[] }
  | { readonly is: 'path'; readonly path: readonly HopJson[] }
  | { readonly is: 'touch'; readonly name: string; readonly steps: readonly number[] }
  | {
      readonly is: 'stub';
      readonly wire: string;
      readonly end: string;
      readonly at: readonly string[];
      readonly reach: ReachJson | null;
    }
  | { readonly is: 'bare'; readonly end: string; readonly reach: ReachJson | null }
  | { readonly is: 'refusal'; readonly reason: string }
  | { readonly is: 'count'; readonly part: string; readonly inBag: number; readonly used: number }
  | {
      readonly is: 'power';
      readonly load: string;
      readonly volts: number | null;
      readonly state: { readonly on: readonly string[]; readonly off: readonly string[] };
      readonly open: HopJson | null;
      readonly path: readonly HopJson[];
    }
  | {
      readonly is: 'tie';
      readonly between: readonly [string, string];
      readonly state: { readonly on: readonly string[] };
      readonly path: readonly HopJson[];
    }
  | { readonly is: 'fit' | 'state' | 'drawing' | 'variants' | 'missing' }
  | {
      readonly is: 'limit';
      readonly quantity: string;
      readonly value: number;
      readonly limit: number;
      readonly unit: string;
      readonly parts: readonly { readonly what: string; readonly volts: number }[];
    };

/** A finding with what follows from it. */
export type FindingJson = {
  readonly kind: string;
  readonly obligation: number;
  readonly step: number | null;
  readonly points: readonly string[];
  readonly witness: WitnessJson;
  readonly culprits: readonly number[];
  readonly consequences: readonly {
    readonly kind: string;
    readonly obligation: number;
    readonly step: number | null;
    readonly points: readonly string[];
  }[];
};

/** The verdict on one variant. */
export type VariantJson = {
  readonly variant: string;
  readonly verdict: string;
  readonly obligations: readonly { readonly obligation: number; readonly verdict: string }[];
  readonly circuits: readonly {
    readonly name: string;
    readonly verdict: string;
    readonly places: readonly string[];
    readonly proof: readonly HopJson[] | null;
  }[];
  readonly findings: readonly FindingJson[];
  readonly stubs: readonly {
    readonly wire: string;
    readonly end: string;
    readonly at: readonly string[];
    readonly state: string;
    readonly covered: string | null;
  }[];
};

/** The verdict on a kit. */
export type KitJson = {
  readonly verdict: string | null;
  readonly judged: number;
  readonly variants: readonly VariantJson[];
};
