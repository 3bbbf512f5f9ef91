import { startWriter, type Writer } from '../_support/start-writer';
import { until, type Victim } from './kill-in-turn';

/** Numbers one life of a writer has to itself. */
const NUMBERS = 100_000;
/** Entries that must be answered for writing to go on. */
const ENOUGH = 4;

/** A writer that is started again, under further numbers, when it was killed. */
export interface Lives extends Victim {
  all: Writer[];
  /** Settled when it has been told of a few more writes. */
  goesOn: () => Promise<void>;
  stop: () => void;
}

/**
 * @param name   of the writer, and key of its site
 * @param url    address of the database, with the rights of the processes
 */
export function keepWriting(name: string, url: string): Lives {
  const all: Writer[] = [];
  let isOver = false;
  const begin = () => {
    const writer = startWriter(name, url, all.length * NUMBERS + 1);
    writer.child.on('exit', () => {
      if (!isOver) begin();
    });
    all.push(writer);
  };
  begin();
  const answered = () => all.reduce((sum, { entries }) => sum + entries.length, 0);
  return {
    name: 'writer',
    all,
    pid: () => all.at(-1)?.child.pid,
    goesOn: async () => {
      const before = answered();
      await until(() => answered() >= before + ENOUGH, `${name} was told of no further write`);
    },
    stop: () => {
      isOver = true;
      all.at(-1)?.child.kill('SIGKILL');
    },
  };
}
