import { type Diagnostic, type KitFile, makeDiagnostic } from '@loomproof/netlist';
import { type Stage, stageNames } from '@loomproof/verify';

/** What the command line says of what is plugged. */
export interface StageOptions {
  readonly stage: Stage['is'];
  readonly pulled: readonly string[];
}

/** The name of a stage from what was typed. */
export function stageNamed(typed: string): Stage['is'] {
  return stageNames.find((name) => name.replace(' ', '-') === typed) ?? 'unplugged';
}

/**
 * The stage for one job of a kit: connectors by their names.
 *
 * @returns the stage, or diagnostics for connectors that no variant has
 */
export function stagesOf(
  kit: KitFile,
  { stage, pulled }: StageOptions,
): {
  readonly value: (job: KitFile['variants'][number]['job']) => Stage;
  readonly diagnostics: readonly Diagnostic[];
} {
  const known = new Set(kit.variants.flatMap(({ job }) => job.connectors.map((one) => one.name)));
  const diagnostics = pulled
    .filter((name) => !known.has(name))
    .map((name) =>
      makeDiagnostic({
        code: 'unknown-name',
        message: `there is no connector \`${name}\``,
        help: 'name a connector of the kit file after `--pull`',
      }),
    );
  const value = (job: KitFile['variants'][number]['job']): Stage =>
    stage === 'in place'
      ? {
          is: stage,
          pulled: new Set(job.connectors.flatMap((one, index) => (pulled.includes(one.name) ? [index] : []))),
        }
      : { is: stage };
  return { value, diagnostics };
}
