import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from '../inspect/files';

/** A process that has ended, with what it printed. */
export interface Ended {
  exitCode: number;
  out: string;
  err: string;
}

/**
 * Runs one of the installed tools to its end, whatever it exits with.
 *
 * @param command  its name among the binaries of the installed packages, and what it is told
 * @param cwd      folder it is started in
 * @param more     what it is told besides, to make it print what a program can read
 */
export function run(command: readonly string[], cwd: string, more: string[] = []): Promise<Ended> {
  const [tool = '', ...args] = [...command, ...more];
  return new Promise((resolve, reject) => {
    const env = { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' };
    const child = spawn(join(ROOT, 'node_modules', '.bin', tool), args, { cwd, env });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ exitCode: code ?? -1, out, err }));
  });
}

/** The JSON a tool printed, which may have coloured or other words round it. */
export function readJson(tool: string, out: string, err: string): Record<string, unknown> {
  const from = out.indexOf('{');
  const to = out.lastIndexOf('}');
  if (from < 0) throw new Error(`${tool} printed no JSON: ${out}${err}`);
  return JSON.parse(out.slice(from, to + 1));
}
