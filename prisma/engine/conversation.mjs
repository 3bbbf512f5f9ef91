// @ts-check
// Prisma's command line talks to its engine in JSON-RPC, one message a line, over stdin and stdout.
import { createInterface } from 'node:readline';

/** @typedef {{ id: number, method?: string, params?: unknown }} Message */
/** @typedef {Record<string, (params: unknown) => Promise<unknown>>} Engine */

/** The code Prisma's engine answers with when an errand failed. */
const FAILED = 4466;

let current = /** @type {number | undefined} */ (undefined);
let panic = /** @type {string | undefined} */ (undefined);

/** @param {string} message the engine's last words */
export function rememberPanic(message) {
  panic = message;
}

/**
 * Answers every message in turn until stdin closes, then ends the process.
 *
 * @param {() => Promise<Engine>} start makes the engine, at the first message that needs it
 */
export function converse(start) {
  let engine = /** @type {Promise<Engine> | undefined} */ (undefined);
  let queue = Promise.resolve();
  const lines = createInterface({ input: process.stdin });
  lines.on('line', (line) => {
    if (!line.trim()) return;
    const message = /** @type {Message} */ (JSON.parse(line));
    if (!message.method) return;
    queue = queue.then(async () => {
      current = message.id;
      engine ??= start();
      await answer(message, engine);
    });
  });
  lines.on('close', () => queue.finally(() => process.exit(0)));
}

/**
 * @param {Message} message what is asked
 * @param {Promise<Engine>} starting the engine, perhaps still starting
 */
async function answer(message, starting) {
  const method = message.method === 'getDatabaseVersion' ? 'version' : (message.method ?? '');
  try {
    const engine = await starting;
    if (typeof engine[method] !== 'function') throw new Error(`This schema engine has no errand named ${method}.`);
    const result = await engine[method](message.params ?? undefined);
    const printed = method === 'diff' && /** @type {{ stdout?: string } | undefined} */ (result)?.stdout;
    if (printed) send({ id: 900_000 + message.id, method: 'print', params: { content: printed } });
    send({ id: message.id, result: result ?? null });
  } catch (error) {
    const { message: words, code, meta } = /** @type {{ message?: string, code?: string, meta?: unknown }} */ (error);
    refuse(message.id, words ?? String(error), code ?? null, meta ?? null);
  }
}

/**
 * A panic inside the engine surfaces as an uncaught error. Unhandled, it once ended `migrate diff` silently with exit
 * code 0, as though nothing differed; so it is answered as a failure, and the process ends with 101.
 *
 * @param {unknown} error what surfaced
 */
export function crash(error) {
  const words = panic ?? (error instanceof Error ? (error.stack ?? error.message) : String(error));
  process.exitCode = 101;
  if (current === undefined) process.stderr.write(`${words}\n`);
  else refuse(current, words, null, null);
  process.stdout.write('', () => process.exit(101));
}

/**
 * @param {number} id of the message refused
 * @param {string} message why
 * @param {string | null} code Prisma's error code, when there is one
 * @param {unknown} meta what goes with the code
 */
function refuse(id, message, code, meta) {
  const data = { is_panic: false, error_code: code, message, meta };
  send({ id, error: { code: FAILED, message: 'An error happened. Check the data field for details.', data } });
}

/** @param {object} body of a message */
function send(body) {
  process.stdout.write(`${JSON.stringify({ jsonrpc: '2.0', ...body })}\n`);
}
