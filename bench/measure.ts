import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { median } from './median.ts';

/** A candidate by its name with the size of its inputs. */
export interface Measured {
  readonly name: string;
  readonly size: number;
}

/** What one candidate gave: the milliseconds of each round, and what came out of it. */
export interface Times {
  readonly rounds: readonly number[];
  readonly digest: string;
}

/** The median over the rounds of one candidate's time divided by the other's in the same round. */
export function ratio(one: Times | undefined, other: Times | undefined): number {
  return median((one?.rounds ?? []).map((ms, round) => ms / (other?.rounds[round] ?? Number.NaN)));
}

/**
 * Measures candidates in interleaved rounds, starting with another one each time.
 * @param groups - the candidates of one group share a process; groups do not pay for each other's heap.
 * @param warmUp - rounds before those that count.
 * @returns the times in the order of the candidates.
 */
export async function measure(
  groups: readonly (readonly Measured[])[],
  rounds: number,
  warmUp: number,
): Promise<readonly Times[]> {
  const children = groups.map((group) =>
    fork(
      fileURLToPath(new URL('./measure-worker.ts', import.meta.url)),
      group.map(({ name, size }) => `${name}/${size}`),
    ),
  );
  try {
    const digests = (await Promise.all(children.map((child) => answer(child)))).flat();
    const turns = groups.flatMap((group, process) => group.map((_, at) => ({ process, at })));
    const times = turns.map((): number[] => []);
    for (let round = 0; round < warmUp + rounds; round += 1) {
      for (let turn = 0; turn < turns.length; turn += 1) {
        const index = (turn + round) % turns.length;
        const { process, at } = turns[index] as { process: number; at: number };
        const child = children[process] as ChildProcess;
        child.send(at);
        const ms = Number(await answer(child));
        if (round >= warmUp) times[index]?.push(ms);
      }
    }
    return times.map((list, at) => ({ rounds: list, digest: String(digests[at]) }));
  } finally {
    for (const child of children) child.kill();
  }
}

function answer(child: ChildProcess): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const stop = (code: unknown): void => reject(new Error(`a measured process ended with ${String(code)}`));
    child.once('exit', stop);
    child.once('message', (message) => {
      child.off('exit', stop);
      resolve(message);
    });
  });
}
