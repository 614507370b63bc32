import type { Progress } from '@loomproof/verify';
import { type Answer, answerWork, type Question, type Told } from './engine-worker.ts';

/** Who is told of the work on a question. */
export interface Asker {
  readonly progress: (progress: Progress) => void;
  readonly answer: (answer: Answer) => void;
  readonly failed: () => void;
}

/** Milliseconds that the page computes at a stretch where it has no worker. */
const sliceMs = 25;

/**
 * Computes diagnoses beside the page, in a worker or else in slices between which the page has its turn. A new question
 * ends the work on the one before.
 */
export class Engine {
  readonly #source: string;
  #worker: Worker | null = null;
  #asked = 0;

  /** @param source - the text of the script of this page */
  constructor(source: string) {
    this.#source = source;
  }

  /** Answers a question later; a question that is stopped is never answered. */
  ask(question: Question, asker: Asker): void {
    this.stop();
    const asked = this.#asked;
    const isStill = (): boolean => asked === this.#asked;
    const inSlices = (): void => computeInSlices(question, asker, isStill);
    try {
      const address = URL.createObjectURL(new Blob([this.#source], { type: 'text/javascript' }));
      const worker = new Worker(address);
      this.#worker = worker;
      worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
        if (!isStill()) return;
        if (data.is === 'progress') asker.progress(data.progress);
        else {
          this.#end();
          asker.answer(data.answer);
        }
      });
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        worker.terminate();
        if (isStill()) inSlices();
      });
      worker.postMessage(question);
      setTimeout(() => URL.revokeObjectURL(address), 10_000);
    } catch {
      inSlices();
    }
  }

  /** Ends what is being computed. */
  stop(): void {
    this.#asked += 1;
    this.#end();
  }

  #end(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }
}

function computeInSlices(question: Question, asker: Asker, isStill: () => boolean): void {
  const work = answerWork(question);
  const slice = (): void => {
    if (!isStill()) return;
    const start = performance.now();
    try {
      for (;;) {
        const { done, value } = work.next();
        if (done === true) {
          asker.answer(value);
          return;
        }
        if (performance.now() - start < sliceMs) continue;
        asker.progress(value);
        break;
      }
    } catch {
      asker.failed();
      return;
    }
    setTimeout(slice);
  };
  setTimeout(slice);
}
