// @ts-check
// `npm test`: every check and every test, with the packages and a throw-away database server made ready first. Until the
// packages are installed this uses nothing but Node's own modules.
import { join } from 'node:path';
import { installPackages } from '../app/_start/packages.mjs';
import { ROOT } from '../app/_start/places.mjs';
import { throwAwayServer } from '../app/_start/postgres/throw-away.mjs';
import { onEnd, undoAll } from '../app/_start/undo.mjs';
import { closingLines, tally } from './_support/counts.mjs';
import { LANES, runInLanes } from './_support/lanes.mjs';
import { makeTemplate } from './_support/make-template.mjs';
import { runStep } from './_support/run-step.mjs';
import { STEPS } from './steps.mjs';

const isFast = process.argv.includes('--fast');
const began = performance.now();

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
  process.on(signal, () => void undoAll().then(() => process.exit(1)));
}

try {
  const server = await prepare();
  const failed = await runAll(server);
  await undoAll();
  process.exit(failed === 0 ? 0 : 1);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  await undoAll();
  process.exit(1);
}

/** @returns {Promise<string>} address of a server with the template database on it, gone when this run ends */
async function prepare() {
  console.log('\n== packages and database');
  await installPackages(ROOT, process.env);
  const server = await throwAwayServer();
  onEnd(server.remove);
  await makeTemplate(server.url);
  console.log(`== ready after ${seconds(began)}`);
  return server.url;
}

/**
 * Every step is run, also after one has failed: one run shows everything that is wrong.
 *
 * @param {string} server address of the database server
 * @returns {Promise<number>} how many steps failed
 */
async function runAll(server) {
  const steps = STEPS.filter((step) => !(isFast && step.isSlow));
  const env = environment(server);
  const ended = await runInLanes(
    steps,
    LANES,
    async (step, say) => ({ step, ...(await runStep(step, ROOT, env, say)) }),
    (words) => void process.stdout.write(words),
  );
  const failed = ended.filter(({ status }) => status !== 0).map(({ step }) => step.heading);
  const counted = ended.flatMap(({ step: { heading, counts }, output }) =>
    counts ? [{ heading, lines: closingLines(counts, output) }] : [],
  );
  close(counted, steps.length, failed);
  return failed.length;
}

/**
 * @param {string} server address of the database server
 * @returns {NodeJS.ProcessEnv} for every step: no database of the person's own, nothing reported to anybody
 */
function environment(server) {
  const { DATABASE_URL: _, HOLDFAST_DATA: __, PORT: ___, ...rest } = process.env;
  const path = `${join(ROOT, 'node_modules/.bin')}:${process.env.PATH ?? ''}`;
  return { ...rest, PATH: path, HOLDFAST_TEST_SERVER: server, NEXT_TELEMETRY_DISABLED: '1' };
}

/**
 * @param {{ heading: string, lines: string[] }[]} counted the runners' closing lines
 * @param {number} steps how many were run
 * @param {string[]} failed headings of those that failed
 */
function close(counted, steps, failed) {
  console.log('\n== closing counts');
  for (const { heading, lines } of counted) {
    console.log(heading);
    for (const line of lines.length > 0 ? lines : ['      (the runner gave no counts)']) console.log(line);
  }
  const tests = tally(counted.flatMap(({ lines }) => lines));
  const verdict = failed.length === 0 ? 'all passed' : `${failed.length} failed (${failed.join(', ')})`;
  console.log(
    `Total: ${steps} steps, ${verdict}; ${tests.passed} tests passed, ${tests.failed} failed; ${seconds(began)}`,
  );
}

/**
 * @param {number} since an instant of `performance.now()`
 * @returns {string} for instance `12.3 s`
 */
function seconds(since) {
  return `${((performance.now() - since) / 1000).toFixed(1)} s`;
}
