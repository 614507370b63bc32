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

type Change = (job: Job) => Job | null;

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
  read(asked.size, 'wire', parseSize, (name, size) => (job) => withWire(job, name, { size }));
  read(
    asked.length,
    'wire',
    parseLength,
    (name, { mm }) =>
      (job) =>
        withWire(job, name, { lengthMm: mm }),
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
  for (const { name, what, change } of changes) {
    let found = false;
    variants = variants.map((one) => {
      const job = change(one.job);
      if (job === null) return one;
      found = true;
      return { ...one, job };
    });
    if (found) continue;
    const known = kit.variants.flatMap(({ job }) => [...job.wires, ...job.elements].map((one) => one.name));
    const near = nearestName(name, known);
    complain(`no ${what} is called \`${name}\``, near === null ? null : `did you mean \`${near}\`?`);
  }
  return { kit: { ...kit, variants }, diagnostics };
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
  const parts = new Map(job.parts);
  for (const { action } of job.steps) {
    if (action.kind !== 'fit fuse' || action.element !== index) continue;
    const part = parts.get(action.part);
    if (part?.is === 'fuse') parts.set(action.part, { ...part, ratingAmps });
  }
  return {
    ...job,
    parts,
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
