import {
  type Diagnostic,
  type Job,
  type KitFile,
  makeDiagnostic,
  nearestName,
  parseLength,
  parseQuantity,
  parseSize,
} from '@loomproof/netlist';
import { shortestPieceMm } from '@loomproof/verify';

/** What is to be different, each as `name=value`. */
export interface WhatIf {
  readonly size: readonly string[];
  readonly length: readonly string[];
  readonly fuse: readonly string[];
  readonly load: readonly string[];
}

/** The kit with what was asked for changed, or what is wrong with the question. */
export interface WhatIfReading {
  readonly kit: KitFile;
  readonly diagnostics: readonly Diagnostic[];
}

/** The changed job; null where nothing has the name; in words why it cannot be so. */
type Change = (job: Job) => Job | string | null;

/** Changes sizes, lengths, fuses and loads in every variant that has them. */
export function whatIf(kit: KitFile, asked: WhatIf): WhatIfReading {
  const diagnostics: Diagnostic[] = [];
  const complain = (message: string, help: string | null): void => {
    diagnostics.push(makeDiagnostic({ code: 'what-if', message, ...(help === null ? {} : { help }) }));
  };
  const changes: { readonly name: string; readonly what: string; readonly change: Change }[] = [];
  const read = <T>(
    texts: readonly string[],
    what: string,
    parse: (
      text: string,
    ) =>
      | { readonly ok: true; readonly value: T }
      | { readonly ok: false; readonly problem: string; readonly help: string | null },
    change: (name: string, value: T) => Change,
  ): void => {
    for (const text of texts) {
      const at = text.lastIndexOf('=');
      const [name, value] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
      const parsed = parse(value);
      if (at < 1) complain(`\`${text}\` does not say what of what`, 'write it as name=value');
      else if (!parsed.ok) complain(parsed.problem, parsed.help);
      else changes.push({ name, what, change: change(name, parsed.value) });
    }
  };
  read(
    asked.size,
    'wire',
    parseSize,
    (name, size) => (job) =>
      // A capacity that was said belongs to the wire as it was.
      withWire(job, name, { size, capacityAmps: null }),
  );
  read(
    asked.length,
    'wire',
    parseLength,
    (name, { mm }) =>
      (job) =>
        withLength(job, name, mm),
  );
  read(
    asked.fuse,
    'fuse',
    (text) => parseQuantity(text, 'A'),
    (name, amps) => (job) => withFuse(job, name, amps),
  );
  read(
    asked.load,
    'load',
    (text) => parseQuantity(text, 'W'),
    (name, watts) => (job) => withLoad(job, name, watts),
  );
  let variants = kit.variants;
  const refusals = new Set<string>();
  for (const { name, what, change } of changes) {
    let found = false;
    variants = variants.map((one) => {
      const job = change(one.job);
      if (job === null) return one;
      found = true;
      if (typeof job !== 'string') return { ...one, job };
      refusals.add(job);
      return one;
    });
    if (found) continue;
    const known = kit.variants.flatMap(({ job }) => namesOf(job, what));
    const near = nearestName(name, known);
    complain(`no ${what} is called \`${name}\``, near === null ? null : `did you mean \`${near}\`?`);
  }
  for (const refusal of refusals) complain(refusal, null);
  return { kit: { ...kit, variants }, diagnostics };
}

/** What a change may be asked of. */
function namesOf({ wires, elements }: Job, what: string): readonly string[] {
  if (what === 'wire') return wires.map(({ name }) => name);
  return elements.flatMap(({ kind, name }) =>
    (what === 'fuse' ? kind === 'fuse' : kind === 'load' || kind === 'coil') ? [name] : [],
  );
}

/** A wire keeps the places at which it is cut or tapped, so it cannot become shorter than those. */
function withLength(job: Job, name: string, lengthMm: number): Job | string | null {
  const changed = withWire(job, name, { lengthMm });
  if (changed === null) return null;
  const shortest = shortestPieceMm(
    changed,
    changed.wires.findIndex((one) => one.name === name),
  );
  return shortest === null || shortest > 0
    ? changed
    : `${name} cannot be ${lengthMm} mm long: it is cut or tapped further from its end than that, or has no length at all`;
}

function withWire(job: Job, name: string, change: Partial<Job['wires'][number]>): Job | null {
  const index = job.wires.findIndex((one) => one.name === name);
  if (index < 0) return null;
  return { ...job, wires: job.wires.map((one, at) => (at === index ? { ...one, ...change } : one)) };
}

/** A fuse is the one as found and any that a step fits there. */
function withFuse(job: Job, name: string, ratingAmps: number): Job | null {
  const index = job.elements.findIndex((one) => one.kind === 'fuse' && one.name === name);
  if (index < 0) return null;
  // The part that a step fits there is one of its own, since the same part may be fitted elsewhere as well.
  const parts = new Map(job.parts);
  const bag = new Map(job.bag);
  const steps = job.steps.map((step) => {
    const { action } = step;
    const part = action.kind === 'fit fuse' && action.element === index ? parts.get(action.part) : undefined;
    if (action.kind !== 'fit fuse' || part?.is !== 'fuse') return step;
    const own = `${action.part} for ${name}`;
    parts.set(own, { ...part, ratingAmps });
    bag.set(action.part, (bag.get(action.part) ?? 1) - 1);
    bag.set(own, (bag.get(own) ?? 0) + 1);
    return { ...step, action: { ...action, part: own } };
  });
  return {
    ...job,
    parts,
    bag,
    steps,
    elements: job.elements.map((one, at) => (at === index ? { ...one, ratingAmps } : one)),
  };
}

function withLoad(job: Job, name: string, watts: number): Job | null {
  const isLoad = (kind: string): boolean => kind === 'load' || kind === 'coil';
  const index = job.elements.findIndex((one) => isLoad(one.kind) && one.name === name);
  if (index < 0) return null;
  // A resistance that was said belongs to the load as it was.
  return {
    ...job,
    elements: job.elements.map((one, at) => (at === index ? { ...one, watts, ohm: null } : one)),
  };
}
