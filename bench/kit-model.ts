import { type KitFile, locate, resolveKit } from '@loomproof/netlist';
import { proveKit } from '@loomproof/verify';
import { makeHarness } from './harness-model.ts';
import { kitDocument } from './kit-document.ts';

/**
 * A kit that is proved, on a harness of the model with 2.4 cavities for each wire (the device pins not counted).
 * @throws Error when the kit does not come out as proved; then the model is wrong and nothing may be measured with it.
 */
export function makeKit(wireCount: number, stepCount: number, seed: number): KitFile {
  const feeds = Math.floor(wireCount / 100);
  const model = makeHarness(wireCount - feeds, seed, Math.round(wireCount * 2.4));
  const live = new Set<string>();
  // Which stubs a source reaches through the loads is what the first run finds; the second run has them declared.
  for (const attempt of [1, 2]) {
    const read = resolveKit(locate(kitDocument(model, feeds, stepCount, live)), () => null);
    const kit = read.value;
    if (kit === null) throw new Error(`the model kit cannot be read: ${read.diagnostics[0]?.message ?? ''}`);
    const verdict = proveKit(kit);
    if (verdict.verdict === 'proved') return kit;
    const found = verdict.variants[0]?.findings ?? [];
    for (const one of found)
      if (one.kind === 'stub-not-dead' && one.witness.is === 'stub')
        live.add(`${one.witness.wire} ${one.witness.at[0] ?? ''}`);
    const other = found.find((one) => attempt === 2 || one.kind !== 'stub-not-dead');
    if (other !== undefined || verdict.diagnostics.length > 0)
      throw new Error(
        `the model kit is not proved: ${other?.message ?? verdict.diagnostics[0]?.message ?? ''}`,
      );
  }
  throw new Error('the model kit is not proved');
}
