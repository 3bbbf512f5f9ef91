import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { ROOT } from '../../app/_start/places.mjs';

/** A process that writes all the time, and what it was told is stored. */
export interface Writer {
  child: ChildProcess;
  /** Numbers of entries, and of descriptions of the site, that were answered as stored. */
  entries: number[];
  imports: number[];
  /** What it said of writes that failed. */
  failed: string[];
}

/**
 * @param name    of the writer, and key of its site
 * @param url     address of the database
 * @param first   number it begins with
 */
export function startWriter(name: string, url: string, first = 1): Writer {
  const args = ['--conditions=react-server', '--import', 'tsx', 'tests/drill/writer.ts', name, String(first)];
  const env = { ...process.env, DATABASE_URL: url };
  const child = spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'inherit'] });
  const writer: Writer = { child, entries: [], imports: [], failed: [] };
  createInterface({ input: child.stdout }).on('line', (line) => {
    const [kind, n] = line.split(' ');
    if (kind === 'entry') writer.entries.push(Number(n));
    else if (kind === 'import') writer.imports.push(Number(n));
    else writer.failed.push(line);
  });
  return writer;
}
