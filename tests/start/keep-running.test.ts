import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { describe, expect, test, vi } from 'vitest';
import { keepRunning, pauseAfter } from '../../app/_start/children/keep-running.mjs';
import { bornAt } from '../../app/_start/born.mjs';

const WATCH = fileURLToPath(new URL('../../app/_start/children/parent-watch.mjs', import.meta.url));
const IDLE = 'setInterval(() => {}, 1000)';

function idle(code = IDLE): ChildProcess {
  return spawn(process.execPath, ['-e', code], { stdio: 'ignore' });
}

describe('a process that is kept running', () => {
  test('is started again when it is killed, and told of with the place of its log', async () => {
    const told: string[] = [];
    const kept = keepRunning('web', '/data/web.log', idle, (line) => told.push(line));
    const first = kept.current();
    first.kill('SIGKILL');
    await vi.waitFor(() => expect(kept.current().pid).not.toBe(first.pid), { timeout: 5000, interval: 20 });
    expect(told).toEqual(['web: ended with SIGKILL; starting it again in 0.5 s (/data/web.log)']);
    await kept.stop();
  });

  test('stays ended once it is stopped, also while it waits to be started again', async () => {
    const starts: ChildProcess[] = [];
    const start = () => {
      const child = idle();
      starts.push(child);
      return child;
    };
    const told: string[] = [];
    const kept = keepRunning('web', '', start, (line) => told.push(line));
    kept.current().kill('SIGKILL');
    await vi.waitFor(() => expect(told).toHaveLength(1), { timeout: 5000, interval: 10 });
    await kept.stop();
    const other = keepRunning('worker', '', start, (line) => told.push(line));
    await other.stop();
    expect(starts).toHaveLength(2);
    expect(starts.every(({ exitCode, signalCode }) => exitCode !== null || signalCode !== null)).toBe(true);
    expect(told).toHaveLength(1);
  });

  test('is given ever longer pauses while it fails at once, up to half a minute', () => {
    expect([1, 2, 3, 7, 50].map(pauseAfter)).toEqual([500, 1000, 2000, 30_000, 30_000]);
  });
});

test('a process of Holdfast ends when its supervisor is killed', async () => {
  // The supervisor starts one process with the watch, says its number, and is killed.
  const code = `
    const { spawn } = require('node:child_process');
    const args = ['--import', ${JSON.stringify(WATCH)}, '-e', ${JSON.stringify(IDLE)}];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'ignore', 'ipc'], detached: true });
    child.once('spawn', () => console.log(child.pid));`;
  const supervisor = spawn(process.execPath, ['-e', code], { stdio: ['ignore', 'pipe', 'inherit'] });
  const [said] = await once(supervisor.stdout, 'data');
  const pid = Number(said);
  expect(bornAt(pid)).toBeDefined();
  supervisor.kill('SIGKILL');
  await vi.waitFor(() => expect(bornAt(pid)).toBeUndefined(), { timeout: 10_000, interval: 20 });
});
