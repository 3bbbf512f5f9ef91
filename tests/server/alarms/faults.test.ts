import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { storeReadings } from '#data/readings/store-readings';
import { ROOT } from '../../../app/_start/places.mjs';
import { freshDatabase } from '../../_support/database';
import { type MailGate, startMailGate } from '../../drill/mail-gate';
import { alarmSite, type AlarmSite, always, SENSOR, warm, withAlarms } from './alarm-site';

// Two workers at once, while one after the other is done to them: killed in the middle of a batch, cut off from the database, cut
// off from the mail server. `npm run faults` does more, with a database of its own and clocks that step.
/** ms the mail server is away. */
const AWAY_MS = 2000;

const { query } = freshDatabase();
const workers: ChildProcess[] = [];
let mail: MailGate;
let site: AlarmSite;
let sensorId = '';

beforeAll(async () => {
  mail = await startMailGate();
  site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  sensorId = String((await query('SELECT id FROM sensor WHERE key = $1', [SENSOR])).rows[0]?.id);
});
afterAll(async () => {
  for (const worker of workers) worker.kill('SIGKILL');
  await mail.close();
});

function startWorker(): ChildProcess {
  const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/worker/main.ts'];
  const env = { ...process.env, HOLDFAST_MAIL_URL: mail.url };
  const worker = spawn(process.execPath, args, { cwd: ROOT, env, stdio: 'ignore' });
  workers.push(worker);
  return worker;
}
async function kill(worker: ChildProcess | undefined): Promise<void> {
  worker?.kill('SIGKILL');
  if (worker?.exitCode === null && worker.signalCode === null) await once(worker, 'exit');
}
const FAULTS: Record<string, () => Promise<void>> = {
  'a worker is killed': async () => {
    await kill(workers.shift());
    startWorker();
  },
  'the database cuts everybody off': async () => {
    await query(
      'SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()',
    );
  },
  'the mail server is away': async () => {
    mail.setAway(true);
    await wait(AWAY_MS);
    mail.setAway(false);
  },
};

const count = async (sql: string) => Number((await query(`SELECT count(*) AS n FROM ${sql}`)).rows[0]?.n);
const soon = (is: () => Promise<void>) => vi.waitFor(is, { timeout: 60_000, interval: 50 });

/** A reading comes, by a process of its own that is cut off as well: it is sent again until it was answered as stored. */
async function comes(value: number): Promise<void> {
  const at = new Date();
  await soon(async () => {
    await storeReadings(site.siteId, [{ sensorId, at, value, quality: 'good', origin: 'device' }], {
      receivedAt: new Date(),
    });
  });
}

test('nothing that was stored is lost, no alarm is missed or doubled, and each call is made at least once', async () => {
  startWorker();
  startWorker();
  let raised = 0;
  for (const [fault, happens] of Object.entries(FAULTS)) {
    await comes(27);
    raised += 1;
    const happening = happens();
    await soon(async () => expect(await count('alarm_occurrence'), fault).toBe(raised));
    await happening;
    await comes(25);
    await soon(async () => expect(await count("alarm_event WHERE kind = 'returned'"), fault).toBe(raised));
  }
  await soon(async () => expect(await count("alarm_call_try WHERE result = 'taken'")).toBeGreaterThanOrEqual(raised));
  const { rows } = await query(`
    SELECT c.id, (SELECT count(*)::int FROM alarm_event e WHERE e.occurrence_id = o.id AND e.kind IN ('raised', 'returned')) AS events
      FROM alarm_occurrence o LEFT JOIN alarm_call c ON c.occurrence_id = o.id`);
  expect(rows.map(({ events }) => events)).toEqual(Array(raised).fill(2));
  const told = rows.map(({ id }) => mail.taken.filter(({ raw }) => raw.includes(`<${id}@`)).length);
  expect(
    told.every((times) => times >= 1),
    `told ${told.join(', ')} times`,
  ).toBe(true);
  expect(await count('reading')).toBe(2 * raised);
}, 120_000);
