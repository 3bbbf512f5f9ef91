// @ts-check
// Steps side by side on a machine with more than one core, and their words on the screen in the order of the list.
import { availableParallelism } from 'node:os';

/** How many steps run at once: most of them keep one core busy, and two at a time fit into the memory of a small machine. */
export const LANES = Math.min(2, availableParallelism());

/**
 * Runs every step, as many at once as there are lanes, each as early as the list and its `after` allow.
 *
 * @template {{ heading: string, after?: string[] }} S
 * @template R
 * @param {S[]} steps in the order in which they should begin; what a step waits for and is not among them holds nobody up
 * @param {number} lanes how many at once, 1 or more
 * @param {(step: S, say: (words: string) => void) => Promise<R>} run one step to its end; what it says is shown whole, in order
 * @param {(words: string) => void} show puts words on the screen
 * @returns {Promise<R[]>} what came of each, in the order of the list
 * @throws {Error} when steps wait for each other; and whatever `run` throws
 */
export async function runInLanes(steps, lanes, run, show) {
  const voices = inOrder(steps.length, show);
  /** @type {R[]} */
  const results = [];
  const waiting = steps.map((_, at) => at);
  const unended = new Set(steps.map(({ heading }) => heading));
  /** @type {Set<Promise<void>>} */
  const running = new Set();
  const begin = (/** @type {number} */ at, /** @type {S} */ step) => {
    const voice = voices[at];
    const work = run(step, (words) => voice?.say(words)).then((result) => {
      results[at] = result;
      unended.delete(step.heading);
      voice?.end();
      running.delete(work);
    });
    running.add(work);
  };
  while (waiting.length > 0 || running.size > 0) {
    const free = () => waiting.findIndex((at) => !(steps[at]?.after ?? []).some((name) => unended.has(name)));
    for (let next = free(); next >= 0 && running.size < lanes; next = free()) {
      const [at = 0] = waiting.splice(next, 1);
      const step = steps[at];
      if (step) begin(at, step);
    }
    if (running.size === 0)
      throw new Error(`These steps wait for each other: ${waiting.map((at) => steps[at]?.heading).join(', ')}.`);
    await Promise.race(running);
  }
  return results;
}

/**
 * Several speakers, of whom only the first that has not ended is heard at once; the others are heard when their turn comes.
 *
 * @param {number} count of speakers
 * @param {(words: string) => void} show puts words on the screen
 * @returns {{ say: (words: string) => void, end: () => void }[]} one for each
 */
function inOrder(count, show) {
  const held = Array.from({ length: count }, () => '');
  const ended = Array.from({ length: count }, () => false);
  let first = 0;
  return held.map((_, at) => ({
    say: (words) => {
      if (at === first) show(words);
      else held[at] += words;
    },
    end: () => {
      ended[at] = true;
      while (ended[first]) {
        first += 1;
        show(held[first] ?? '');
      }
    },
  }));
}
