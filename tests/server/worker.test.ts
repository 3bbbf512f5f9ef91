import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { parseCrontab } from 'graphile-worker';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { database } from '#data/client';
import { wake } from '#data/wake';
import { crontab, taskList } from '#server/worker/task-list';
import { ROOT } from '../../app/_start/places.mjs';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();
const started: ChildProcess[] = [];

function startWorker(): ChildProcess {
  const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/worker/main.ts'];
  const worker = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'ignore', 'inherit'] });
  started.push(worker);
  return worker;
}

/** Of the processes: what runs the jobs of one gives signs of its own, under names of the job library. */
async function sightings(): Promise<{ worker: string; seen_at: Date }[]> {
  return (await query("SELECT worker, seen_at FROM worker_sighting WHERE worker LIKE '%:%' ORDER BY worker")).rows;
}

afterEach(() => {
  for (const worker of started.splice(0)) worker.kill('SIGKILL');
});

describe('the list of tasks', () => {
  test('names every file of the tasks folder, and nothing else', () => {
    const files = readdirSync(`${ROOT}/app/_server/worker/tasks`).map((file) => file.replace(/\.ts$/, ''));
    expect(Object.keys(taskList).sort()).toEqual(files.sort());
  });

  test('is all that the timetable calls', () => {
    const called = parseCrontab(crontab).map(({ task }) => task);
    expect(called.length).toBeGreaterThan(0);
    for (const task of called) expect(Object.keys(taskList)).toContain(task);
  });
});

describe('a worker process', () => {
  test('gives a sign at its start and when woken, and ends cleanly when asked to', async () => {
    const worker = startWorker();
    const [first] = await vi.waitFor(
      async () => {
        const seen = await sightings();
        expect(seen).toHaveLength(1);
        return seen;
      },
      { timeout: 30_000, interval: 50 },
    );
    await wake(database(), 'heartbeat', {});
    await vi.waitFor(
      async () => {
        const [second] = await sightings();
        expect(second?.seen_at.getTime()).toBeGreaterThan(first?.seen_at.getTime() ?? 0);
      },
      { timeout: 10_000, interval: 50 },
    );
    const ended = once(worker, 'exit');
    worker.kill('SIGTERM');
    expect(await ended).toEqual([0, null]);
  });

  test('goes on when its connections are cut', async () => {
    startWorker();
    await vi.waitFor(async () => expect(await sightings()).toHaveLength(2), { timeout: 30_000, interval: 50 });
    await query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
        WHERE datname = current_database() AND pid <> pg_backend_pid()`,
    );
    await query('DELETE FROM worker_sighting');
    await query("SELECT graphile_worker.add_job('heartbeat')");
    await vi.waitFor(async () => expect(await sightings()).toHaveLength(1), { timeout: 20_000, interval: 50 });
  });
});
