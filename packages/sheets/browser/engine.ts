import { type Answer, answer, type Question } from './engine-worker.ts';

/** Without a worker the page stands still while it computes, so fewer pairs of faults are tried. */
const mostPairsInPage = 500;

/** Computes diagnoses beside the page; a new question ends the work on the one before. */
export class Engine {
  readonly #source: string;
  #worker: Worker | null = null;
  #asked = 0;

  /** @param source - the text of the script of this page */
  constructor(source: string) {
    this.#source = source;
  }

  /** Answers a question later; a question that is stopped is never answered. */
  ask(question: Question, then: (answer: Answer) => void, failed: () => void): void {
    this.stop();
    const asked = this.#asked;
    const isStill = (): boolean => asked === this.#asked;
    const inPage = (): void => {
      this.#worker = null;
      setTimeout(() => {
        if (!isStill()) return;
        const options = { ...question.options, mostPairs: mostPairsInPage };
        let found: Answer = null;
        try {
          found = answer({ ...question, options });
        } catch {
          return failed();
        }
        then(found);
      });
    };
    try {
      const address = URL.createObjectURL(new Blob([this.#source], { type: 'text/javascript' }));
      const worker = new Worker(address);
      this.#worker = worker;
      worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
        if (!isStill()) return;
        this.#end();
        then(data);
      });
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        if (!isStill()) return;
        worker.terminate();
        inPage();
      });
      worker.postMessage(question);
      setTimeout(() => URL.revokeObjectURL(address), 10_000);
    } catch {
      inPage();
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
