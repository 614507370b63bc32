import type { HarnessState, Joint, Piece, Station, Terminal, WireEnd } from './harness-state.ts';
import { endsOf, findEnd, terminalIn } from './harness-state.ts';
import type { StepRow } from './kit-document.ts';

/** What came of a step: why it could not be done, or the rules it broke while it was done, and what it worked on. */
export type StepResult = {
  readonly refused: string | null;
  readonly breaches: readonly string[];
  /** Conductors worked on. */
  readonly wires: readonly string[];
  /** What must be without current for this. */
  readonly metal: readonly (WireEnd | Terminal | Joint | Piece)[];
  readonly places: readonly string[];
  /** A place that something was put in. */
  readonly at?: string;
};

const refuse = (reason: string): StepResult => ({
  refused: reason,
  breaches: [],
  wires: [],
  metal: [],
  places: [],
});

const done = (
  wires: readonly string[] = [],
  metal: StepResult['metal'] = [],
  breaches: readonly (string | false)[] = [],
  places: readonly string[] = [],
): StepResult => ({ refused: null, breaches: breaches.filter((one) => one !== false), wires, metal, places });

/** What the step speaks of is not there: it was thrown away, or the step that should have made it could not be done. */
class NotThereError extends Error {
  override readonly name = 'NotThereError';
}

function need<T>(thing: T | undefined, what: string): T {
  if (thing === undefined) throw new NotThereError(what);
  return thing;
}

/** Does one step to the harness, as a person would with the parts in hand. */
export function doStep(state: HarnessState, step: StepRow): StepResult {
  try {
    return attempt(state, step);
  } catch (error) {
    if (error instanceof NotThereError) return refuse('not there');
    throw error;
  }
}

/** Everything that a step needs is looked up before anything is changed. */
function attempt(state: HarnessState, step: StepRow): StepResult {
  switch (step.do) {
    case 'disconnect':
      return state.on.delete(step.supply) ? done() : refuse('already so');
    case 'reconnect':
      if (state.on.has(step.supply)) return refuse('already so');
      state.on.add(step.supply);
      return done();
    case 'prove dead':
      return { ...done(), places: [step.at] };
    case 'unplug':
    case 'plug':
      return plugging(state, step.do, step.connector);
    case 'open lock':
    case 'close lock':
    case 'open latch':
    case 'close latch':
      return locking(state, step.do, step.connector);
    case 'cut':
      return cut(state, step);
    case 'strip': {
      const end = need(findEnd(state, step.end), step.end);
      if (end.held?.isTerminal === true) return refuse('has terminal');
      if (end.held !== null) return refuse('not free');
      if (end.cover !== null) return refuse('covered');
      if (end.ready === 'stripped') return refuse('already stripped');
      end.ready = 'stripped';
      return done([end.wire], [end]);
    }
    case 'slide tube': {
      const end = need(findEnd(state, step.end), step.end);
      if (end.held?.isTerminal === true) return refuse('has terminal');
      if (end.held !== null) return refuse('not free');
      if (end.cover !== null) return refuse('covered');
      end.tubes.push(step.with);
      take(state, step.with);
      return done([end.wire]);
    }
    case 'join':
      return join(state, step);
    case 'seal':
      return seal(state, step.joint);
    case 'tap':
      return tap(state, step);
    case 'remove tap': {
      const joint = need(state.joints.get(step.tap), step.tap);
      if (joint.state !== 'crimped' && joint.state !== 'sealed') return refuse('not there');
      const wires = joint.ends.map((end) => end.wire);
      const run = [...state.pieces.values()].find((piece) => piece.stations.some((one) => one.is === joint));
      for (const end of joint.ends) {
        end.held = null;
        end.ready = 'cut';
      }
      const metal = [...joint.ends, joint];
      joint.ends.length = 0;
      joint.state = 'wound';
      return done(run === undefined ? wires : [...wires, run.wire], metal);
    }
    case 'fit terminal':
      return fitTerminal(state, step);
    case 'withdraw': {
      const terminal = terminalIn(state, step.cavity);
      if (terminal === undefined) return refuse('nothing there');
      const home = need(state.facts.places.get(step.cavity)?.connector ?? undefined, step.cavity);
      if (state.locks.get(home) === 'closed') return refuse('locked');
      terminal.at = null;
      const breaches = [state.plugged.has(home) && 'worked while plugged'];
      return done(wiresOf(terminal), [terminal], breaches);
    }
    case 'insert':
      return insert(state, step.end, step.cavity);
    case 'attach': {
      const end = need(findEnd(state, step.end), step.end);
      const terminal = end.held?.isTerminal === true ? end.held : null;
      if (terminal === null) return refuse('no terminal');
      if (terminal.at !== null) return refuse('not free');
      if (coverOf(end) !== null) return refuse('covered');
      if (terminal.part !== null && state.facts.parts.get(terminal.part)?.ring !== 'yes')
        return refuse('wrong terminal');
      terminal.at = step.stud;
      const holds = state.facts.places.get(step.stud)?.holds ?? null;
      const rings = state.terminals.filter((one) => one.at === step.stud).length;
      const breaches = [holds !== null && rings > holds && 'too many rings'];
      return { ...done(wiresOf(terminal), [terminal], breaches, [step.stud]), at: step.stud };
    }
    case 'detach': {
      const end = need(findEnd(state, step.end), step.end);
      const terminal = end.held?.isTerminal === true ? end.held : null;
      if (terminal?.at == null || state.facts.places.get(terminal.at)?.is !== 'stud')
        return refuse('not there');
      terminal.at = null;
      return done(wiresOf(terminal), [terminal]);
    }
    case 'cover': {
      const joint = state.joints.get(step.end);
      if (joint !== undefined) {
        if (joint.state !== 'wound') return refuse(joint.state === 'covered wound' ? 'covered' : 'not there');
        joint.state = 'covered wound';
        joint.cover = step.with;
        take(state, step.with);
        return done();
      }
      const end = need(findEnd(state, step.end), step.end);
      if (!isLoose(end)) return refuse('not free');
      if (coverOf(end) !== null) return refuse('covered');
      end.cover = step.with;
      take(state, step.with);
      return done([end.wire]);
    }
    case 'tie back': {
      const end = need(findEnd(state, step.end), step.end);
      if (!isLoose(end)) return refuse('not free');
      take(state, step.with);
      return done([end.wire]);
    }
    case 'fasten': {
      const piece = need(state.pieces.get(step.wire), step.wire);
      take(state, step.with);
      return done([piece.wire]);
    }
    case 'fit plug':
      return fitPlug(state, step.cavity, step.with);
    case 'remove plug':
      return removePlug(state, step.cavity);
    case 'fit seal': {
      // A wire seal does not pass over a terminal.
      const end = need(findEnd(state, step.end), step.end);
      if (end.held?.isTerminal === true) return refuse('has terminal');
      if (end.held !== null) return refuse('not free');
      if (end.seal !== null) return refuse('already so');
      end.seal = step.with;
      take(state, step.with);
      return done([end.wire]);
    }
    case 'remove seal': {
      const end = need(findEnd(state, step.end), step.end);
      if (end.held?.isTerminal === true) return refuse('has terminal');
      if (end.held !== null) return refuse('not free');
      if (end.seal === null) return refuse('nothing there');
      state.partsLog.push({ part: end.seal, is: 'came out' });
      end.seal = null;
      return done([end.wire]);
    }
    case 'fit fuse':
      if (state.fuses.get(step.fuse) === true) return refuse('occupied');
      state.fuses.set(step.fuse, true);
      take(state, step.with);
      return done();
    case 'remove fuse':
      if (state.fuses.get(step.fuse) !== true) return refuse('not fitted');
      state.fuses.set(step.fuse, false);
      return done();
    case 'place':
      if (state.placed.has(step.device)) return refuse('already so');
      state.placed.add(step.device);
      return done();
    case 'interpose': {
      const other = state.facts.connectors.get(step.at)?.other ?? null;
      if (other === null) return refuse('no counterpart');
      if (state.plugged.has(step.at)) return refuse('already plugged');
      if (state.interposed.some((one) => one.at === step.at || one.at === other))
        return refuse('already plugged');
      state.interposed.push({ at: step.at, near: step.near, far: step.far });
      for (const one of [step.at, step.near, step.far, other]) state.plugged.add(one);
      return done(
        [],
        [],
        [openLock(state, [step.at, step.near, step.far, other]) && 'plugged with lock open'],
      );
    }
    case 'fit jumper':
      state.joints.set(step.as, {
        name: step.as,
        is: 'jumper',
        part: step.with ?? null,
        zone: null,
        cover: null,
        fromKit: true,
        ends: [],
        between: step.between,
        state: 'crimped',
        isTerminal: false,
      });
      take(state, step.with);
      return done();
    case 'remove jumper': {
      const joint = state.joints.get(step.jumper);
      if (joint === undefined || joint.is !== 'jumper' || joint.state === 'removed')
        return refuse('not there');
      joint.state = 'removed';
      return done();
    }
    case 'remove off-cut': {
      const piece = need(state.pieces.get(step.wire), step.wire);
      const taps = piece.stations.some((one) => !('label' in one.is) && one.is.state !== 'removed');
      const own = endsOf(piece);
      const crimpedWithOthers = own.some(
        (end) => end.held?.isTerminal === true && end.held.ends.some((one) => !own.includes(one)),
      );
      if (taps || crimpedWithOthers || !own.every(isLoose)) return refuse('still attached');
      state.pieces.delete(piece.name);
      state.offCuts.push(piece);
      state.terminals.splice(
        0,
        Infinity,
        ...state.terminals.filter((one) => !one.ends.some((end) => endsOf(piece).includes(end))),
      );
      return done([piece.wire]);
    }
  }
}

/** Takes a part out of the bag, whether or not it is in there; the counts are compared at the end. */
function take(state: HarnessState, part: string | undefined): void {
  if (part !== undefined) state.partsLog.push({ part, is: 'taken' });
}

/** Whether an end hangs free, with or without a terminal on it. */
export function isLoose(end: WireEnd): boolean {
  return end.held === null || (end.held.isTerminal && end.held.at === null);
}

/** The cover over an end; a terminal and all ends crimped in it have one cover. */
export function coverOf(end: WireEnd): string | null {
  return end.held?.isTerminal === true
    ? (end.held.ends.map((one) => one.cover).find((one) => one !== null) ?? null)
    : end.cover;
}

function wiresOf(terminal: Terminal): readonly string[] {
  return terminal.ends.map((end) => end.wire);
}

function openLock(state: HarnessState, connectors: readonly string[]): boolean {
  return connectors.some((one) => state.locks.get(one) === 'open');
}

function plugging(state: HarnessState, kind: 'plug' | 'unplug', name: string): StepResult {
  const other = state.facts.connectors.get(name)?.other ?? null;
  if (other === null) return refuse('no counterpart');
  const both = [name, other];
  if (kind === 'unplug') {
    if (!state.plugged.has(name)) return refuse('not plugged');
    if (both.some((one) => state.latches.get(one) === 'closed')) return refuse('latched');
    for (const one of both) state.plugged.delete(one);
    return done();
  }
  if (state.plugged.has(name)) return refuse('already plugged');
  for (const one of both) state.plugged.add(one);
  const unplaced = both.some((one) => {
    const facts = state.facts.connectors.get(one);
    return facts?.device === true && facts.fromKit && !state.placed.has(one);
  });
  return done([], [], [openLock(state, both) && 'plugged with lock open', unplaced && 'not placed']);
}

function locking(
  state: HarnessState,
  kind: 'open lock' | 'close lock' | 'open latch' | 'close latch',
  name: string,
): StepResult {
  const isLock = kind.endsWith('lock');
  const states = isLock ? state.locks : state.latches;
  const wanted = kind.startsWith('open') ? 'open' : 'closed';
  const now = states.get(name);
  if (now === undefined) return refuse(isLock ? 'no lock' : 'no latch');
  if (now === wanted) return refuse('already so');
  if (kind === 'close latch' && !state.plugged.has(name)) return refuse('not plugged');
  states.set(name, wanted);
  return done();
}

/** Millimetres from the wire's first end of `80 mm from LABEL` on a piece. */
export function positionOn(piece: Piece, text: string): { at: number; fromFirst: boolean } {
  const [, distance = '', label = ''] = /^(\S+) mm from (.+)$/.exec(text) ?? [];
  const { stations } = piece;
  const [first, last] = [need(stations[0], text), need(stations[stations.length - 1], text)];
  const fromFirst = first.labels.includes(label);
  return { at: fromFirst ? first.at + Number(distance) : last.at - Number(distance), fromFirst };
}

function cut(state: HarnessState, step: Extract<StepRow, { do: 'cut' }>): StepResult {
  const piece = need(state.pieces.get(step.wire), step.wire);
  const { at, fromFirst } = positionOn(piece, step.at);
  const [measured, beyond] = step.leaves;
  const [left, right] = fromFirst ? [measured, beyond] : [beyond, measured];
  const zone = step.zone ?? state.facts.wires.get(piece.wire)?.zone ?? null;
  const fresh = (name: string, other: string): Station => ({
    at,
    labels: ['cut', other],
    is: {
      name: `${name}@${other}`,
      label: other,
      wire: piece.wire,
      zone,
      held: null,
      ready: 'cut',
      cover: null,
      seal: null,
      tubes: [],
    },
  });
  const before = { name: piece.name, wire: piece.wire, stations: [...piece.stations] };
  state.pieces.delete(piece.name);
  state.pieces.set(left, {
    name: left,
    wire: piece.wire,
    stations: [...piece.stations.filter((one) => one.at < at), fresh(left, right)],
  });
  state.pieces.set(right, {
    name: right,
    wire: piece.wire,
    stations: [fresh(right, left), ...piece.stations.filter((one) => one.at > at)],
  });
  return done([piece.wire], [before]);
}

function join(state: HarnessState, step: Extract<StepRow, { do: 'join' }>): StepResult {
  const ends = step.ends.map((text) => need(findEnd(state, text), text));
  for (const end of ends) {
    if (end.held?.isTerminal === true) return refuse('has terminal');
    if (end.held !== null) return refuse('not free');
    if (end.cover !== null) return refuse('covered');
    if (end.ready !== 'stripped') return refuse('not stripped');
  }
  const joint: Joint = {
    name: step.as,
    is: 'splice',
    part: step.with,
    zone: step.zone ?? null,
    cover: null,
    fromKit: true,
    ends,
    between: [],
    state: 'crimped',
    isTerminal: false,
  };
  for (const end of ends) end.held = joint;
  state.joints.set(step.as, joint);
  take(state, step.with);
  const most = Number(state.facts.parts.get(step.with)?.ends ?? '2');
  return done(
    ends.map((end) => end.wire),
    ends,
    [ends.length > most && 'too many ends', ends.some((end) => flexes(state, end.wire)) && 'in flex zone'],
  );
}

function flexes(state: HarnessState, wire: string): boolean {
  return state.facts.wires.get(wire)?.row.flex === 'yes';
}

function seal(state: HarnessState, name: string): StepResult {
  const joint = state.joints.get(name);
  if (joint === undefined) return refuse('nothing there');
  if (joint.state === 'sealed') return refuse('already so');
  if (joint.state !== 'crimped' || joint.is !== 'splice') return refuse('nothing there');
  const tube = joint.part === null ? undefined : state.facts.parts.get(joint.part)?.tube;
  if (tube !== 'built in' && !joint.ends.some((end) => end.tubes.length > 0)) return refuse('no tube');
  joint.state = 'sealed';
  return done(joint.ends.map((end) => end.wire));
}

function tap(state: HarnessState, step: Extract<StepRow, { do: 'tap' }>): StepResult {
  const piece = need(state.pieces.get(step.run), step.run);
  const branch = need(findEnd(state, step.branch), step.branch);
  if (branch.held?.isTerminal === true) return refuse('has terminal');
  if (branch.held !== null) return refuse('not free');
  if (branch.cover !== null) return refuse('covered');
  const { at } = positionOn(piece, step.at);
  const metal = [{ ...piece, stations: [...piece.stations] }, branch];
  const joint: Joint = {
    name: step.as,
    is: 'tap',
    part: step.with,
    zone: step.zone ?? state.facts.wires.get(piece.wire)?.zone ?? null,
    cover: null,
    fromKit: true,
    ends: [branch],
    between: [],
    state: 'crimped',
    isTerminal: false,
  };
  branch.held = joint;
  state.joints.set(step.as, joint);
  const index = piece.stations.findIndex((one) => one.at > at);
  piece.stations.splice(index, 0, { at, labels: [step.as], is: joint });
  take(state, step.with);
  return done([piece.wire, branch.wire], metal, [flexes(state, piece.wire) && 'in flex zone']);
}

function fitTerminal(state: HarnessState, step: Extract<StepRow, { do: 'fit terminal' }>): StepResult {
  const ends = step.ends.map((text) => need(findEnd(state, text), text));
  for (const end of ends) {
    if (end.held?.isTerminal === true) return refuse('has terminal');
    if (end.held !== null) return refuse('not free');
    if (end.cover !== null) return refuse('covered');
    if (end.ready !== 'stripped') return refuse('not stripped');
  }
  const made: Terminal = {
    name: `terminal of ${ends[0]?.name ?? ''}`,
    part: step.with,
    ends,
    at: null,
    madeByStep: true,
    seatedByStep: false,
    home: null,
    isTerminal: true,
  };
  for (const end of ends) {
    end.held = made;
    if (step.seal !== undefined) {
      end.seal = step.seal;
      take(state, step.seal);
    }
  }
  state.terminals.push(made);
  take(state, step.with);
  const most = Number(state.facts.parts.get(step.with)?.wires ?? '1');
  return done(
    ends.map((end) => end.wire),
    ends,
    [ends.length > most && 'too many wires'],
  );
}

function insert(state: HarnessState, text: string, cavity: string): StepResult {
  const end = need(findEnd(state, text), text);
  const place = need(state.facts.places.get(cavity), cavity);
  const terminal = end.held?.isTerminal === true ? end.held : null;
  if (terminal === null) return refuse(end.held === null ? 'no terminal' : 'not free');
  if (terminal.at !== null) return refuse('not free');
  if (coverOf(end) !== null) return refuse('covered');
  if (terminal.part !== null && state.facts.parts.get(terminal.part)?.ring === 'yes')
    return refuse('wrong terminal');
  if (place.blocked) return refuse('blocked');
  if (state.plugs.has(cavity)) return refuse('plug in cavity');
  if (place.is === 'pin' || terminalIn(state, cavity) !== undefined) return refuse('occupied');
  const home = place.connector ?? '';
  if (state.locks.get(home) === 'closed') return refuse('locked');
  terminal.at = cavity;
  terminal.seatedByStep = true;
  const breaches = [state.plugged.has(home) && 'worked while plugged'];
  return { ...done(wiresOf(terminal), [terminal], breaches, [cavity]), at: cavity };
}

function fitPlug(state: HarnessState, cavity: string, part: string): StepResult {
  const place = need(state.facts.places.get(cavity), cavity);
  if (place.blocked) return refuse('blocked');
  if (state.plugs.has(cavity)) return refuse('plug in cavity');
  if (place.is === 'pin' || terminalIn(state, cavity) !== undefined) return refuse('occupied');
  state.plugs.set(cavity, part);
  take(state, part);
  return done();
}

function removePlug(state: HarnessState, cavity: string): StepResult {
  const part = state.plugs.get(cavity);
  if (part === undefined) return refuse('nothing there');
  state.plugs.delete(cavity);
  state.partsLog.push({ part, is: 'came out' });
  return done();
}
