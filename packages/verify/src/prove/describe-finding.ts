import type { DriveState, Made, RawFinding, Witness } from './finding.ts';

/** The sentence for people that a finding's data says; pure text, made at the end. */
export function describeFinding(finding: RawFinding): string {
  const { kind, points, witness } = finding;
  const what = points.join(', ');
  switch (kind) {
    case 'wrong-connection':
    case 'circuit-open':
    case 'net-split':
      return witness.is === 'nets' ? describeNets(witness) : what;
    case 'apart-joined':
      return `${points.join(' and ')} must stay apart and are joined as found`;
    case 'apart-unknown':
      return `whether ${points.join(' and ')} stay apart cannot be told: both leave the model${witness.is === 'state' ? ` (${witness.what})` : ''}`;
    case 'touched-unnamed':
      return `${what} is worked on or different, and nothing that is wanted names it`;
    case 'mate-changed':
      return witness.is === 'state'
        ? `${what} should be mated with ${witness.expected}, and is with ${witness.found}`
        : what;
    case 'kit-wire-idle':
      return `kit wire ${what} serves no circuit that is wanted`;
    case 'drawing-differs':
      return witness.is === 'drawing'
        ? `the table drawn after the work says ${witness.drawn}, the work gives ${witness.found}`
        : what;
    case 'stub-undeclared':
      return `${what} is left hanging on ${witness.is === 'stub' && witness.at.length > 0 ? witness.at.join(', ') : 'a source'} and no stub is declared for it`;
    case 'stub-not-dead':
      return `${what} is declared dead, but ${witness.is === 'stub' ? (witness.reach?.source ?? 'a source') : 'a source'} reaches it`;
    case 'stub-not-live':
      return `${what} is declared live, but nothing that can be a source reaches it`;
    case 'stub-missing':
      return `a stub of ${points.join(' at ')} is declared and there is none`;
    case 'stub-unknown':
      return `whether ${what} is dead cannot be told: it is not said what ${witness.is === 'stub' ? (witness.reach?.source ?? 'its far side') : 'its far side'} is`;
    case 'bare-end-live':
      return `${what} lies bare while ${witness.is === 'bare' ? (witness.reach?.source ?? 'a source') : 'a source'} reaches it`;
    case 'bare-end':
      return `${what} is left bare`;
    case 'wound-open':
      return `where ${what} was removed the insulation is open`;
    case 'cover-unfit':
      return `${what} is closed by something that is not right for its zone${witness.is === 'state' ? ` (${witness.found})` : ''}`;
    case 'joint-unsealed':
      return `${what} is not sealed`;
    case 'zone-unknown':
      return `whether ${what} is closed well enough cannot be told: its zone is not said`;
    case 'open-cavity':
      return `cavity ${what} of a sealed connector is left open`;
    case 'seal-missing':
      return `the wire in ${what} has no seal`;
    case 'terminal-unfit':
      return witness.is === 'fit' ? `terminal ${witness.part} does not belong into ${what}` : what;
    case 'size-out-of-range':
    case 'seal-out-of-range':
      return witness.is === 'fit'
        ? `${witness.part} takes ${witness.range ?? '?'}, ${what} is ${witness.value ?? '?'}`
        : what;
    case 'range-unknown':
      return witness.is === 'fit'
        ? `whether ${witness.part} fits ${what} cannot be told: ${witness.range === null ? 'its range is not said' : 'the size is not said'}`
        : what;
    case 'too-many-ends':
      return `more ends are joined than the splice takes: ${what}`;
    case 'too-many-wires':
      return `more wires are crimped than the terminal takes: ${what}`;
    case 'too-many-rings':
      return `the stud carries more rings than it may: ${what}`;
    case 'in-flex-zone':
      return `a splice or tap lies where the wire bends in use: ${what}`;
    case 'second-splice':
      return `more than one splice between two disconnect points: ${what}`;
    case 'step-refused':
      return `the step cannot be done: ${witness.is === 'refusal' ? refusalWords(witness.reason, what) : what}`;
    case 'work-on-live':
      return `${what} is worked on while ${witness.is === 'bare' ? (witness.reach?.source ?? 'a source') : 'a source'} reaches it`;
    case 'worked-while-plugged':
      return `a terminal is moved while its connector is plugged: ${what}`;
    case 'plugged-with-lock-open':
      return `${what} is plugged while a secondary lock is open`;
    case 'not-placed':
      return `${what} is plugged to a device that is not in its place`;
    case 'left-unplugged':
      return `${what} is left unplugged`;
    case 'still-plugged':
      return `${what} shall be left unplugged and is plugged`;
    case 'lock-left-open':
      return `${what} is left open`;
    case 'supply-left-off':
      return `${what} is left disconnected`;
    case 'part-unused':
      return witness.is === 'count'
        ? `${what} stays in the bag: ${witness.inBag} there, ${witness.used} used`
        : what;
    case 'part-missing':
      return witness.is === 'count'
        ? `${what} runs out: ${witness.inBag} in the bag, ${witness.used} needed`
        : what;
    case 'jumper-left':
      return `jumper ${what} is still fitted`;
    case 'deviation-unmatched':
      return `a deviation allows ${what}, and there is nothing to allow`;
    case 'variants-differ':
      return `the two variants differ at ${what}, and nothing says that they may`;
    case 'variants-alike':
      return `the two variants are said to differ at ${what}, and they do not`;
    case 'special-touched':
      return witness.is === 'state'
        ? `${what}, a conductor of ${witness.what}, is worked on or probed, and nobody has released it`
        : what;
    case 'colour-alone':
      return `${witness.is === 'state' ? witness.what : 'a text'} names a wire by its colour alone: "${what}"`;
    case 'bus-pair-unfit':
      return witness.is === 'state'
        ? `bus pair ${what}: ${witness.what}, expected ${witness.expected}, found ${witness.found}`
        : `bus pair ${what}: ${limitWords(witness)}`;
    case 'drop-too-large':
      return `${what} loses too much on its way: ${limitWords(witness)}`;
    case 'conductor-unprotected':
      return `${what}: ${limitWords(witness)}`;
    case 'conductor-overloaded':
    case 'fuse-overloaded':
    case 'drive-overloaded':
      return `${what} carries too much: ${limitWords(witness)}`;
    case 'drive-underloaded':
      return `${what} carries so little that its module takes the load for burnt out: ${limitWords(witness)}`;
    case 'electrical-unknown':
      return `whether currents and losses keep their limits cannot be told; not said: ${what}`;
    case 'back-feed-unknown':
      return `whether anything feeds back cannot be told; not said: ${what}`;
    case 'load-powered':
    case 'load-unpowered':
      return witness.is === 'power' ? powerWords(witness, kind === 'load-powered') : what;
    case 'sources-tied':
      return witness.is === 'tie'
        ? `${witness.between.join(' and ')} are one piece of metal with ${stateWords(witness.state)}`
        : what;
    default: {
      const unknown: never = kind;
      return unknown;
    }
  }
}

function limitWords(witness: Witness): string {
  if (witness.is !== 'limit') return '';
  const { quantity, value, limit, unit, source } = witness;
  return `${quantity} ${roundWords(value)} ${unit}, limit ${roundWords(limit)} ${unit} (${source})`;
}

function powerWords(witness: Extract<Witness, { is: 'power' }>, lit: boolean): string {
  const { load, volts, state, open } = witness;
  const when = stateWords(state);
  if (!lit) return `${load} has no power with ${when}, and it should`;
  const much = volts === null ? 'some volts' : `${roundWords(volts)} V`;
  const broken =
    open === null ? '' : ` once ${open.name ?? `the join of ${open.from} and ${open.to}`} is open`;
  return `${load} gets ${much} with ${when}${broken}, and nobody asked for that`;
}

function stateWords({ on }: DriveState): string {
  return on.length === 0 ? 'everything off' : `only ${on.join(', ')} on`;
}

/** Four significant digits are more than any of this is known to. */
function roundWords(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function describeNets(witness: Extract<Witness, { is: 'nets' }>): string {
  const parts: string[] = [];
  for (const join of witness.joins) {
    const since =
      join.cause === 'step'
        ? `since step ${join.step}`
        : join.cause === 'kit as made'
          ? 'by the kit as it is made'
          : 'as found, and nothing parts them';
    parts.push(`${join.between[0]} is joined to ${join.between[1]}, ${since}`);
  }
  for (const open of witness.opens) {
    const name = open.circuit === null ? 'a net that nobody named' : open.circuit;
    const pair = open.missing.map(([a, b]) => `${a} from ${b}`).join(' and ');
    parts.push(
      `${name} is open, ${pair}, ${open.cause === 'step' ? `parted at step ${open.step}` : 'never joined'}`,
    );
  }
  return parts.join('; ');
}

/** `stock`, `kit` or `step 7` for people. */
export function madeWords(made: Made): string {
  return typeof made === 'number' ? `step ${made}` : made;
}

const refusals: ReadonlyMap<string, string> = new Map([
  ['occupied', 'the cavity holds a terminal'],
  ['plug in cavity', 'a plug is in the cavity'],
  ['blocked', 'the position is moulded shut'],
  ['locked', 'the secondary lock is closed'],
  ['latched', 'the position latch is closed'],
  ['already plugged', 'it is plugged'],
  ['not plugged', 'it is not plugged'],
  ['no counterpart', 'it has no other half'],
  ['no lock', 'it has no secondary lock'],
  ['no latch', 'it has no position latch'],
  ['already so', 'it is so already'],
  ['nothing there', 'there is nothing'],
  ['not there', 'it is not there'],
  ['not free', 'it does not hang free'],
  ['covered', 'the end is covered'],
  ['not stripped', 'the end is not stripped'],
  ['already stripped', 'the end is stripped already'],
  ['no terminal', 'the end carries no terminal'],
  ['has terminal', 'the end carries a terminal'],
  ['wrong terminal', 'this kind of terminal does not go there'],
  ['still attached', 'it is still attached'],
  ['no tube', 'no tube was slid on before the crimp'],
  ['not fitted', 'it is not fitted'],
]);

function refusalWords(reason: string, what: string): string {
  return `${what}: ${refusals.get(reason) ?? reason}`;
}
