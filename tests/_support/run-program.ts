import { spawn } from 'node:child_process';
import { ROOT } from '../../app/_start/places.mjs';

/** How a program ended and what it said. */
export interface Ended {
  code: number | null;
  stdout: string;
  stderr: string;
}

/**
 * Runs a program of Node's in the checkout, to its end.
 *
 * @param args   its path and words
 * @param env    what its environment has besides this one's; an undefined value takes a name away
 */
export function runProgram(args: string[], env: Record<string, string | undefined> = {}): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, env: { ...process.env, ...env } });
    const ended: Ended = { code: null, stdout: '', stderr: '' };
    child.stdout.on('data', (words: Buffer) => {
      ended.stdout += words.toString('utf8');
    });
    child.stderr.on('data', (words: Buffer) => {
      ended.stderr += words.toString('utf8');
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ ...ended, code }));
  });
}
