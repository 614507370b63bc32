import type { LongWork, Progress } from '@loomproof/verify';
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

/** What the worker sends: how far it is, and at last the answer. */
export type Told =
  | { readonly is: 'progress'; readonly progress: Progress }
  | { readonly is: 'answer'; readonly answer: Answer };

/** Milliseconds between two words of how far the work is. */
const tellMs = 100;

/** The work of answering a question, wherever it is done. */
export function* answerWork({ model, group, csv, options }: Question): LongWork<Answer> {
  const own = (unpackModel(model) as ReadonlyMap<string, GroupModel>).get(group);
  return own === undefined ? null : yield* explainGroup(own, csv, options);
}

/** Makes this thread answer questions: for the worker. */
export function explainInWorker(): void {
  const tell = (told: Told): void => postMessage(told);
  addEventListener('message', ({ data }: MessageEvent<Question>) => {
    const work = answerWork(data);
    let last = performance.now();
    for (;;) {
      const { done, value } = work.next();
      if (done === true) return tell({ is: 'answer', answer: value });
      if (performance.now() - last < tellMs) continue;
      last = performance.now();
      tell({ is: 'progress', progress: value });
    }
  });
}
