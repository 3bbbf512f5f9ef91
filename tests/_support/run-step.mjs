// @ts-check
// One step of `npm test`: its words go where the runner says, and are kept for the closing counts.
import { spawn } from 'node:child_process';
import { StringDecoder } from 'node:string_decoder';
import { onEnd } from '../../app/_start/undo.mjs';

/**
 * @param {import('../steps.mjs').Step} step to run
 * @param {string} cwd the checkout
 * @param {NodeJS.ProcessEnv} env environment for it
 * @param {(words: string) => void} say takes its words as they come
 * @returns {Promise<{ status: number, output: string }>} how it ended and what it printed
 */
export function runStep({ heading, command }, cwd, env, say) {
  say(`\n== ${heading}: ${command.join(' ')}\n`);
  const began = performance.now();
  const [file = '', ...args] = command;
  return new Promise((resolve, reject) => {
    const colour = process.stdout.isTTY ? { FORCE_COLOR: '1' } : { NO_COLOR: '1', FORCE_COLOR: undefined };
    const child = spawn(file, args, { cwd, env: { ...env, ...colour }, stdio: ['ignore', 'pipe', 'pipe'] });
    const forget = onEnd(() => endOf(child));
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      // A letter of several bytes may come in two pieces.
      const decoder = new StringDecoder('utf8');
      stream.on('data', (bytes) => {
        const words = decoder.write(bytes);
        output += words;
        say(words);
      });
    }
    child.on('error', reject);
    child.on('close', (code) => {
      forget();
      const status = code ?? 1;
      const took = ((performance.now() - began) / 1000).toFixed(1);
      say(`== ${heading}: ${status === 0 ? 'passed' : `FAILED with code ${status}`} after ${took} s\n`);
      resolve({ status, output });
    });
  });
}

/**
 * @param {import('node:child_process').ChildProcess} child to end
 * @returns {Promise<void>} once it has ended
 */
function endOf(child) {
  return new Promise((resolve) => {
    child.once('close', () => resolve());
    child.kill('SIGTERM');
  });
}
