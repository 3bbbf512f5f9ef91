// @ts-check
// One step of `npm test`: its words go to the screen as they come, and are kept for the closing counts.
import { spawn } from 'node:child_process';
import { onEnd } from '../../app/_start/undo.mjs';

/**
 * @param {import('../steps.mjs').Step} step to run
 * @param {string} cwd the checkout
 * @param {NodeJS.ProcessEnv} env environment for it
 * @returns {Promise<{ status: number, output: string }>} how it ended and what it printed
 */
export function runStep({ heading, command }, cwd, env) {
  console.log(`\n== ${heading}: ${command.join(' ')}`);
  const began = performance.now();
  const [file = '', ...args] = command;
  return new Promise((resolve, reject) => {
    const colour = process.stdout.isTTY ? { FORCE_COLOR: '1' } : { NO_COLOR: '1', FORCE_COLOR: undefined };
    const child = spawn(file, args, { cwd, env: { ...env, ...colour }, stdio: ['ignore', 'pipe', 'pipe'] });
    const forget = onEnd(() => endOf(child));
    let output = '';
    const pass = (/** @type {NodeJS.WriteStream} */ screen) => (/** @type {Buffer} */ words) => {
      output += words.toString('utf8');
      screen.write(words);
    };
    child.stdout.on('data', pass(process.stdout));
    child.stderr.on('data', pass(process.stderr));
    child.on('error', reject);
    child.on('close', (code) => {
      forget();
      const status = code ?? 1;
      const took = ((performance.now() - began) / 1000).toFixed(1);
      console.log(`== ${heading}: ${status === 0 ? 'passed' : `FAILED with code ${status}`} after ${took} s`);
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
