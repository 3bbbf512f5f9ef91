import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepRunning } from '../../app/_start/children/keep-running.mjs';
import { keepServer } from '../../app/_start/children/keep-server.mjs';
import { spawnChild, workerProgram } from '../../app/_start/children/spawn-child.mjs';
import { prepareDatabase } from '../../app/_start/database.mjs';
import { ROOT } from '../../app/_start/places.mjs';
import { notedServer } from '../../app/_start/postgres/running.mjs';
import { embeddedServer, stopEmbedded } from '../../app/_start/postgres/server.mjs';
import { killInTurn } from '../drill/kill-in-turn';
import { keepWriting, type Lives } from '../drill/lives';
import { closeToll, tollOf } from '../drill/toll';
import { temporaryFolder } from '../_support/temporary-folder';

// The short form of `npm run drill`, without the pages: the embedded server and the worker as a start keeps them, and a
// process that writes through the use cases as the web process does.

const data = temporaryFolder();
const undo: (() => Promise<void> | void)[] = [];
let url: string;
let writing: Lives;
let worker: ReturnType<typeof keepRunning>;

beforeAll(async () => {
  const embedded = await embeddedServer(data);
  undo.push(() => stopEmbedded(data));
  ({ url } = await prepareDatabase(ROOT, process.env, { url: embedded.url, ownerUrl: embedded.ownerUrl, embedded }));
  undo.push(keepServer(embedded, () => undefined));
  const env = { ...process.env, DATABASE_URL: url, HOLDFAST_DATA: data };
  const child = {
    nodeFlags: ['--conditions=react-server', '--import', 'tsx'],
    args: [workerProgram()],
    cwd: ROOT,
    env,
  };
  worker = keepRunning(
    'worker',
    '',
    () => spawnChild({ ...child, log: join(data, 'worker.log') }),
    () => undefined,
  );
  undo.push(() => worker.stop());
  writing = keepWriting('drill', url);
  undo.push(() => writing.stop());
  await writing.goesOn();
});
afterAll(async () => {
  await closeToll();
  for (const step of undo.reverse()) await step();
});

describe('processes that are killed in the middle of writes', () => {
  test('come back, and nothing that was answered as stored is missing or doubled', async () => {
    const database = { name: 'database', pid: () => notedServer(join(data, 'postgres'))?.pid };
    const victims = [writing, database, { name: 'worker', pid: () => worker.current().pid }];
    expect(await killInTurn(victims, 5, writing.goesOn)).toEqual({ writer: 2, database: 2, worker: 1 });
    writing.stop();
    const toll = await tollOf(url, 'drill', writing.all);
    expect(toll).toMatchObject({ missing: [], doubled: [], broken: null });
    // At most one write was under way whenever something was killed; it may stand there though nobody was told.
    expect(toll.unanswered).toBeLessThanOrEqual(5);
    expect(toll.answered).toBeGreaterThan(20);
  });
});
