// @ts-check
// Runs a program to its end. Its words are kept, and shown only when it fails.
import { spawn } from 'node:child_process';
import { diskFull, Failure, speaksOfFullDisk } from './failure.mjs';
import { onEnd } from './undo.mjs';

/** @typedef {{ file: string, args: string[], env: NodeJS.ProcessEnv, cwd: string }} Program */

/**
 * @param {Program} program to run
 * @returns {Promise<{ status: number, output: string }>} how it ended and everything it printed
 */
export function runProgram({ file, args, env, cwd }) {
  return new Promise((resolve, reject) => {
    const child = spawn(file, args, { env, cwd, stdio: ['ignore', 'pipe', 'pipe'] });
    const forget = onEnd(() => void child.kill());
    let output = '';
    const keep = (/** @type {Buffer} */ words) => {
      output += words.toString('utf8');
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.on('error', reject);
    child.on('close', (status) => {
      forget();
      resolve({ status: status ?? 1, output });
    });
  });
}

/**
 * The same, for a program that must succeed.
 *
 * @param {Program} program to run
 * @param {string} sentence for the person when it fails, after the program's own words
 * @returns {Promise<string>} everything it printed
 * @throws {Failure} when it ends with anything but 0
 */
export async function mustRun(program, sentence) {
  const { status, output } = await runProgram(program);
  if (status === 0) return output;
  if (speaksOfFullDisk(output)) throw new Failure(diskFull(program.cwd));
  throw new Failure(`${output.trimEnd()}\n\n${sentence}`);
}
