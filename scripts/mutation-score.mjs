// What a mutation run says: scores as text. Apart from the run itself, so that a test can ask it in no time.

/** Adds up the states of mutants, as the report of the run names them. */
export function scoreOf(statuses) {
  const counts = new Map();
  for (const status of statuses) counts.set(status, (counts.get(status) ?? 0) + 1);
  const of = (...names) => names.reduce((sum, name) => sum + (counts.get(name) ?? 0), 0);
  return {
    killed: of('Killed'),
    timedOut: of('Timeout'),
    survived: of('Survived'),
    notReached: of('NoCoverage'),
    static: of('Ignored'),
    other: of('CompileError', 'RuntimeError', 'Pending'),
  };
}

/** One directory: the score in per cent of the mutants that count, and what does not count. */
export function directoryLine(directory, score) {
  const { killed, timedOut, survived, notReached } = score;
  return `${directory}: ${percentText(score)} (killed ${killed}, timed out ${timedOut}, survived ${survived}, not reached ${notReached}; not counted: static ${score.static}, other ${score.other})`;
}

/**
 * All directories together.
 *
 * @param scores - of the directories that gave a report
 * @param missing - the directories that gave none: they are named, since a score that leaves one out is of something else
 */
export function totalLine(scores, missing, { share, seed }) {
  const sum = { killed: 0, timedOut: 0, survived: 0, notReached: 0 };
  for (const score of scores) for (const key of Object.keys(sum)) sum[key] += score[key];
  const without = missing.length === 0 ? '' : `; no report of ${missing.join(', ')}`;
  return `all: ${percentText(sum)}, share ${share}, seed ${seed}${without}`;
}

function percentText({ killed, timedOut, survived, notReached }) {
  const caught = killed + timedOut;
  const all = caught + survived + notReached;
  return all === 0 ? 'no mutant' : `${((100 * caught) / all).toFixed(1)} % of ${all}`;
}
