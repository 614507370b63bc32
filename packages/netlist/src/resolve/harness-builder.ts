import type {
  Connector,
  DeviceElement,
  Joint,
  Part,
  Piece,
  Place,
  Position,
  Supply,
  Terminal,
  Wire,
  WireEnd,
} from '../harness/job.ts';
import type { LocatedText } from '../kit/located.ts';
import type { Span } from '../text/index.ts';
import type { Complaints } from './complaints.ts';

/** The parts of {@link Job} that are still growing while a kit is resolved. */
export class HarnessBuilder {
  readonly places: Place[] = [];
  readonly connectors: Connector[] = [];
  readonly wires: Wire[] = [];
  readonly pieces: Piece[] = [];
  readonly ends: WireEnd[] = [];
  readonly terminals: Terminal[] = [];
  readonly joints: Joint[] = [];
  readonly elements: DeviceElement[] = [];
  readonly supplies: Supply[] = [];
  /** Switches that a coil works, until all coils have names. */
  readonly worked: { readonly element: number; readonly coil: LocatedText }[] = [];
  readonly positions = new Map<number, Position>();
  /** By wire: taps as found, in order from its first end. */
  readonly tapsAsFound = new Map<number, readonly number[]>();
  readonly placeByAddress = new Map<string, number>();
  readonly connectorByName = new Map<string, number>();
  readonly jointByName = new Map<string, number>();
  readonly wireByName = new Map<string, number>();
  readonly elementByName = new Map<string, number>();
  readonly terminalAtPlace = new Map<number, number>();
  readonly parts: ReadonlyMap<string, Part>;
  readonly complaints: Complaints;
  /** What holds for conductors of which the row says nothing. */
  wireDefaults: Pick<Wire, 'material' | 'strands' | 'temperatureC' | 'insulationC'> = {
    material: null,
    strands: null,
    temperatureC: null,
    insulationC: null,
  };
  #nodes = 0;

  constructor(parts: ReadonlyMap<string, Part>, complaints: Complaints) {
    this.parts = parts;
    this.complaints = complaints;
  }

  /** Nodes given out so far; places take theirs first, so that a place and its node have one number. */
  get nodeCount(): number {
    return this.#nodes;
  }

  newNode(): number {
    this.#nodes += 1;
    return this.#nodes - 1;
  }

  addPlace(place: Place): number {
    const node = this.newNode();
    this.places.push(place);
    this.placeByAddress.set(place.address, node);
    return node;
  }

  addJoint(joint: Omit<Joint, 'node' | 'cover'> & { readonly cover?: string | null }): number {
    this.joints.push({ ...joint, cover: joint.cover ?? null, node: this.newNode() });
    this.jointByName.set(joint.name, this.joints.length - 1);
    return this.joints.length - 1;
  }

  addTerminal(part: string | null, place: number): number {
    this.terminals.push({ node: this.newNode(), part, ends: [], place });
    return this.terminals.length - 1;
  }

  /** Puts an end into a terminal of the harness before; stock terminals grow while wires are read. */
  crimp(terminal: number, end: number): void {
    (this.terminals[terminal]?.ends as number[] | undefined)?.push(end);
  }

  addEnd(end: Omit<WireEnd, 'node'>): number {
    this.ends.push({ ...end, node: this.newNode() });
    return this.ends.length - 1;
  }

  /**
   * Complains that a name is no place. A cavity of a connector whose own list could not be read is not complained of
   * again: the list is.
   */
  unknownPlace(what: 'place' | 'place or splice', name: string, span: Span | null): void {
    const connector =
      this.connectors[this.connectorByName.get(name.slice(0, Math.max(0, name.indexOf(':')))) ?? -1];
    if (connector?.placeCount === 0) return;
    const joints = what === 'place or splice' ? [...this.jointByName.keys()] : [];
    this.complaints.unknown(what, name, span, [...this.placeByAddress.keys(), ...joints]);
  }
}
