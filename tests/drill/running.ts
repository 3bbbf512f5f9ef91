import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { ROOT } from '../../app/_start/places.mjs';
import { freePort } from '../../app/_start/postgres/port.mjs';
import { notedServer } from '../../app/_start/postgres/running.mjs';
import { appAddressOf, readStored } from '../../app/_start/postgres/stored.mjs';
import type { Victim } from './kill-in-turn';

/** A Holdfast as `npm start` starts it, over a folder that is thrown away. */
export interface Running {
  /** Where it answers, without a path. */
  address: string;
  /** Address of its database, with the rights of the processes. */
  url: string;
  /** What of it can be killed. */
  web: Victim;
  worker: Victim;
  database: Victim;
  /** Stops it and throws its folder away. */
  stop: () => Promise<void>;
}

/**
 * Starts Holdfast and waits until it runs.
 *
 * @throws   when it does not start, with what it said
 */
export async function startHoldfast(): Promise<Running> {
  const data = mkdtempSync(join(realpathSync(tmpdir()), 'holdfast-drill-'));
  const port = await freePort();
  const supervisor = spawn(process.execPath, ['app/_start/start.mjs', '--port', String(port)], {
    cwd: ROOT,
    env: { ...process.env, HOLDFAST_DATA: data, DATABASE_URL: '' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const stop = async () => {
    const ended = supervisor.exitCode === null ? once(supervisor, 'exit') : null;
    supervisor.kill('SIGTERM');
    await ended;
    rmSync(data, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    await untilUp(supervisor);
    const stored = readStored(data);
    if (!stored) throw new Error('nothing is remembered of the database');
    return {
      address: `http://127.0.0.1:${port}`,
      url: appAddressOf(stored),
      web: { name: 'web', pid: () => childOf(supervisor, /\bnext\b/) },
      worker: { name: 'worker', pid: () => childOf(supervisor, /worker\/main\.ts/) },
      database: { name: 'database', pid: () => notedServer(join(data, 'postgres'))?.pid },
      stop,
    };
  } catch (error) {
    await stop();
    throw error;
  }
}

async function untilUp(child: ChildProcess): Promise<void> {
  let said = '';
  child.stdout?.on('data', (words: Buffer) => {
    said += words.toString('utf8');
  });
  while (!said.includes('Holdfast is running at')) {
    if (child.exitCode !== null) throw new Error(`Holdfast did not start:\n${said}`);
    await wait(50);
  }
}

/** @returns number of the supervisor's child whose command line this is; nothing while it has none */
function childOf(supervisor: ChildProcess, program: RegExp): number | undefined {
  const lines = execFileSync('ps', ['-eo', 'pid=,ppid=,args='], { encoding: 'utf8' }).split('\n');
  for (const line of lines) {
    const [, pid, parent, args = ''] = /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line) ?? [];
    if (Number(parent) === supervisor.pid && program.test(args)) return Number(pid);
  }
  return undefined;
}
