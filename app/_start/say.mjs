// @ts-check
// One line of progress a step, with how long it took once it is done.

/**
 * @template T
 * @param {string} what is being done, for instance `packages: installing from the lock file`
 * @param {() => Promise<T>} work the step
 * @returns {Promise<T>} what the step gave
 */
export async function step(what, work) {
  const began = performance.now();
  process.stdout.write(`  ${what} …`);
  try {
    const result = await work();
    process.stdout.write(` ${((performance.now() - began) / 1000).toFixed(1)} s\n`);
    return result;
  } catch (error) {
    process.stdout.write(' failed\n');
    throw error;
  }
}

/** @param {string} line to print as it is */
export function say(line) {
  process.stdout.write(`  ${line}\n`);
}
