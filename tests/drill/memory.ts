import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import type { Victim } from './kill-in-turn';

/** ms between two looks. */
const GLANCE_MS = 1000;
const KIB_A_MIB = 1024;
const run = promisify(execFile);

/**
 * Looks at the resident memory of processes, whatever number they have by then.
 *
 * @returns   ends it, and says the most of each, MiB, by name; NaN of one that was never there
 */
export function watchMemory(processes: readonly Victim[]): { stop: () => Record<string, number> } {
  const peaks = new Map<string, number>();
  const look = async ({ name, pid }: Victim) => {
    const number = pid();
    if (number === undefined) return;
    const { stdout } = await run('ps', ['-o', 'rss=', '-p', String(number)]);
    const size = Number(stdout) / KIB_A_MIB;
    if (!((peaks.get(name) ?? 0) >= size)) peaks.set(name, size);
  };
  const timer = setInterval(() => {
    // One that ends while it is looked at has no memory to speak of.
    for (const one of processes) look(one).catch(() => undefined);
  }, GLANCE_MS);
  return {
    stop: () => {
      clearInterval(timer);
      return Object.fromEntries(processes.map(({ name }) => [name, peaks.get(name) ?? Number.NaN]));
    },
  };
}
