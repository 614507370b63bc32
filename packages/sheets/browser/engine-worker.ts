import { type ExplainOptions, explainGroup, type GroupExplanation } from '../src/checks/explain-group.ts';
import { type PackedModel, unpackModel } from '../src/checks/model-codec.ts';
import type { GroupModel } from '../src/checks/work-checks.ts';

/** What is asked of the engine. */
export interface Question {
  readonly model: PackedModel;
  readonly group: string;
  readonly csv: string;
  readonly options: ExplainOptions;
}

/** What the engine gives back; null where the group has no model. */
export type Answer = GroupExplanation | null;

/** Answers a question at once, wherever it is asked. */
export function answer({ model, group, csv, options }: Question): Answer {
  const own = (unpackModel(model) as ReadonlyMap<string, GroupModel>).get(group);
  return own === undefined ? null : explainGroup(own, csv, options);
}

/** Makes this thread answer questions: for the worker. */
export function explainInWorker(): void {
  addEventListener('message', ({ data }: MessageEvent<Question>) => postMessage(answer(data)));
}
