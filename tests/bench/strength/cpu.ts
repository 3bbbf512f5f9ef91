import { readdirSync, readFileSync } from 'node:fs';
import type { Running } from '../../drill/running';

/** Ticks a second of the times in /proc, on every Linux there is (`getconf CLK_TCK`). */
const TICKS = 100;
/** Places after the name of the program in /proc/PID/stat: the parent, and the time used by itself and by the kernel for it. */
const [PARENT, OWN, KERNEL] = [1, 11, 12] as const;

/** s of the processors that each process used: the figure to go by where other work shares them. */
export type Used = Record<'web' | 'worker' | 'database', number>;

/**
 * Begins to count what Holdfast uses of the processors; PostgreSQL with all the processes of its connections.
 *
 * @returns   says what was used since, s; what ended meanwhile is not counted. NaN where there is no /proc
 */
export function countCpu({ web, worker, database }: Running): () => Used {
  const used = (): Used => {
    const all = listed();
    const of = (pid: number | undefined, withChildren: boolean) =>
      all === null
        ? Number.NaN
        : all
            .filter((one) => pid !== undefined && (one.pid === pid || (withChildren && one.parent === pid)))
            .reduce((sum, one) => sum + one.usedS, 0);
    return { web: of(web.pid(), false), worker: of(worker.pid(), false), database: of(database.pid(), true) };
  };
  const before = used();
  return () => {
    const after = used();
    const since = (name: keyof Used) => after[name] - before[name];
    return { web: since('web'), worker: since('worker'), database: since('database') };
  };
}

interface Process {
  pid: number;
  parent: number;
  usedS: number;
}

/** Every process of the machine; null where it does not tell of them in files. */
function listed(): Process[] | null {
  try {
    return readdirSync('/proc')
      .filter((name) => /^\d+$/.test(name))
      .flatMap((name) => read(Number(name)));
  } catch {
    return null;
  }
}

function read(pid: number): Process[] {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const words = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    return [{ pid, parent: Number(words[PARENT]), usedS: (Number(words[OWN]) + Number(words[KERNEL])) / TICKS }];
  } catch {
    // It ended while the list was read.
    return [];
  }
}
