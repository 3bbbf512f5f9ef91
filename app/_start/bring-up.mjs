// @ts-check
// Everything that follows once the packages are there: database, client, pages, demo, processes.
import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildPages, nextProgram } from './build.mjs';
import { keepRunning } from './children/keep-running.mjs';
import { keepServer } from './children/keep-server.mjs';
import { untilItAnswers } from './children/ready.mjs';
import { ENDS_SOON, frontProgram, spawnChild, workerProgram } from './children/spawn-child.mjs';
import { openDatabase, prepareDatabase } from './database.mjs';
import { generateClient } from './generate.mjs';
import { keptSecret } from './kept-secret.mjs';
import { mustRun } from './run-program.mjs';
import { say, step } from './say.mjs';
import { isEnding, onEnd } from './undo.mjs';

/** How TypeScript of the server rooms runs outside the web server. */
const TYPESCRIPT = ['--conditions=react-server', '--import', 'tsx'];

/**
 * @typedef {object} Start
 * @property {number} port of the web process
 * @property {string} address of the web process on this machine
 * @property {boolean} demo whether to load the demo
 * @property {import('./front.mjs').Front | undefined} front by which other machines come
 * @property {string | undefined} databaseUrl a database of the person's own
 * @property {string | undefined} databaseOwnerUrl the same as the owner of its tables, where that is another account
 * @property {string} data folder
 * @property {string} root the checkout
 * @property {NodeJS.ProcessEnv} env environment for every process
 */

/** @param {Start} start what was asked for */
export async function bringUp(start) {
  const database = await openDatabase(start, start.data);
  const { embedded } = database;
  const { url, setUpToken: token } = await prepareDatabase(start.root, start.env, database, {
    setUp: true,
  });
  // The owner's address stays here: no process that answers or works for people gets to know it.
  const { DATABASE_OWNER_URL: _, ...surroundings } = start.env;
  /** @type {NodeJS.ProcessEnv} */
  const env = {
    ...surroundings,
    DATABASE_URL: url,
    HOLDFAST_DATA: start.data,
    ...originOf(start),
    HOLDFAST_SECRET: start.env.HOLDFAST_SECRET || keptSecret(start.data),
  };
  await generateClient(start.root, env);
  const demo = start.demo ? await loadDemo(start.root, env) : '';
  await buildPages(start.root, env);
  if (isEnding()) return;
  if (embedded) onEnd(keepServer(embedded, say));
  await runProcesses(start, env);
  if (demo) console.log(demo.trimEnd());
  // Here nothing has to be trusted first.
  if (token)
    console.log(setUpLine(start.front?.isLocal ? start.address : (env.HOLDFAST_ADDRESS ?? start.address), token));
  if (start.front) console.log(frontLine(start.front, start.data));
  console.log(`Holdfast is running at ${start.address} (Ctrl-C stops it).`);
}

/**
 * @param {Start} start what was asked for
 * @returns {{ HOLDFAST_ADDRESS: string, HOLDFAST_TLS: string }} where people reach Holdfast and how, for its processes
 */
function originOf({ front, env, address }) {
  if (!front) return { HOLDFAST_ADDRESS: env.HOLDFAST_ADDRESS || address, HOLDFAST_TLS: '' };
  // Who ceases to trust an authority of a machine's own must not be kept out by a promise.
  const own = { HOLDFAST_TLS: 'local', HOLDFAST_HSTS: env.HOLDFAST_HSTS || 'off' };
  return { HOLDFAST_ADDRESS: front.address, ...(front.isLocal ? own : { HOLDFAST_TLS: '' }) };
}

/**
 * @param {import('./front.mjs').Front} front by which other machines come
 * @param {string} data folder
 * @returns {string} what says how, and by which fingerprint the authority is known
 */
function frontLine({ address, isLocal }, data) {
  if (!isLocal) return `Other machines come by ${address}.`;
  const trust = `${address.replace('https:', 'http:')}/trust`;
  const { fingerprint256 } = new X509Certificate(readFileSync(join(data, 'tls/authority.crt')));
  return `Phones and other machines come by ${address}, once they trust this machine: ${trust} says how.
Compare there (SHA-256): ${fingerprint256}`;
}

/**
 * @param {string} address where people reach Holdfast
 * @param {string} token of the link
 * @returns {string} the one line that leads to the first account
 */
function setUpLine(address, token) {
  const link = new URL(`/set-up/${token}`, address).href;
  return `Nobody has an account yet: make the first one at ${link} (good for a day, or until the next start).`;
}

/**
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} env environment with the database in it
 * @returns {Promise<string>} what became of it, and who may sign in to look at it
 */
async function loadDemo(root, env) {
  const command = join(root, 'app/_server/command/load-demo.ts');
  if (!existsSync(command)) return 'The demo is not part of this copy.';
  return await step('demo: loading', () =>
    mustRun(
      { file: process.execPath, args: [...TYPESCRIPT, command], env, cwd: root },
      'The demo could not be loaded: the reason is above.',
    ),
  );
}

// MiB for what is thrown away within a moment. With the usual 16, what a request needs while the database is asked counts as
// something that stays, and has to be collected with all the rest: a quarter of what taking in readings cost.
const ROOM_FOR_YOUNG = '--max-semi-space-size=32';

/**
 * @param {Start} start what was asked for
 * @param {NodeJS.ProcessEnv} surroundings environment with the database in it
 */
async function runProcesses({ root, data, port, address, front }, surroundings) {
  const env = /** @type {NodeJS.ProcessEnv} */ ({ ...surroundings, NODE_ENV: 'production' });
  const shared = { env, cwd: root };
  const pages = [nextProgram(), 'start', '-H', '127.0.0.1', '-p', String(port)];
  const webLog = join(data, 'web.log');
  const worker = { name: 'worker', nodeFlags: TYPESCRIPT, args: [workerProgram()], log: join(data, 'worker.log') };
  const web = { name: 'web', nodeFlags: [...ENDS_SOON, ROOM_FOR_YOUNG], args: pages, log: webLog };
  const keep = (/** @type {typeof worker} */ child) =>
    keepRunning(child.name, child.log, () => spawnChild({ ...child, ...shared }), say);
  const kept = { web: keep(web), worker: keep(worker) };
  onEnd(async () => {
    await Promise.all([kept.web.stop(), kept.worker.stop()]);
  });
  const gate = front && keepFront(front, { root, data, port }, env);
  const first = kept.web.current();
  await step('web and worker: starting', () =>
    untilItAnswers(address, () => first.exitCode === null && first.signalCode === null, webLog),
  );
  if (gate) await step('encryption: starting', gate.ready);
}

/**
 * @param {import('./front.mjs').Front} front by which other machines come
 * @param {Pick<Start, 'root' | 'data' | 'port'>} start what was asked for
 * @param {NodeJS.ProcessEnv} surroundings environment of the web process
 * @returns {{ ready: () => Promise<void> }} waits until it answers
 */
function keepFront(front, { root, data, port }, surroundings) {
  // It stands nearest to whoever comes, and is told nothing of database, mail and secrets.
  const told = Object.entries(surroundings).filter(
    ([name]) => !/^(DATABASE_|HOLDFAST_(?!TLS|ADDRESS|DATA|PROXIES))/.test(name),
  );
  const env = /** @type {NodeJS.ProcessEnv} */ ({
    .../** @type {Record<string, string>} */ (Object.fromEntries(told)),
    NODE_ENV: 'production',
    HOLDFAST_TLS_PORT: String(front.port),
    HOLDFAST_WEB_PORT: String(port),
  });
  const log = join(data, 'front.log');
  const child = { nodeFlags: TYPESCRIPT, args: [frontProgram()], log, env, cwd: root };
  const kept = keepRunning('front', log, () => spawnChild(child), say);
  onEnd(() => kept.stop());
  const first = kept.current();
  const isAlive = () => first.exitCode === null && first.signalCode === null;
  return { ready: () => untilItAnswers(`http://localhost:${front.port}`, isAlive, log) };
}
