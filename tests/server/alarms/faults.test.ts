import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { storeReadings } from '#data/readings/store-readings';
import { ROOT } from '../../../app/_start/places.mjs';
import { freshDatabase } from '../../_support/database';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { alarmSite, type AlarmSite, always, SENSOR, warm, withAlarms } from './alarm-site';

// Two workers at once, while one after the other is done to them: killed in the middle of a batch, cut off from the database, cut
// off from the mail server. `npm run faults -- N` does N rounds of each; the tests do one.
const ROUNDS = Number(process.env.HOLDFAST_FAULT_ROUNDS ?? 1);
/** ms the mail server is away; in the long run, longer than the first pauses between two attempts. */
const AWAY_MS = ROUNDS > 1 ? 30_000 : 2000;

const { query } = freshDatabase();
const workers: ChildProcess[] = [];
const sockets = new Set<Socket>();
let mail: MailServer;
/** Stands before the mail server, and can be away. */
let gate: Server;
let isAway = false;
let site: AlarmSite;
let sensorId = '';

beforeAll(async () => {
  mail = await startMailServer();
  gate = createServer((socket) => {
    sockets.add(socket.on('error', () => undefined).on('close', () => sockets.delete(socket)));
    if (isAway) return void socket.destroy();
    const onward = connect(Number(new URL(mail.url).port), '127.0.0.1').on('error', () => socket.destroy());
    socket.pipe(onward).pipe(socket);
  }).listen(0, '127.0.0.1');
  await once(gate, 'listening');
  site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  sensorId = String((await query('SELECT id FROM sensor WHERE key = $1', [SENSOR])).rows[0]?.id);
});
afterAll(async () => {
  for (const worker of workers) worker.kill('SIGKILL');
  gate.close();
  for (const socket of sockets) socket.destroy();
  await mail.close();
});

function startWorker(): ChildProcess {
  const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/worker/main.ts'];
  const env = { ...process.env, HOLDFAST_MAIL_URL: `smtp://127.0.0.1:${(gate.address() as AddressInfo).port}` };
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
    isAway = true;
    for (const socket of sockets) socket.destroy();
    await wait(AWAY_MS);
    isAway = false;
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

test(
  'nothing that was stored is lost, no alarm is missed or doubled, and each call is made at least once',
  async () => {
    startWorker();
    startWorker();
    let raised = 0;
    for (let round = 0; round < ROUNDS; round++) {
      for (const [fault, happens] of Object.entries(FAULTS)) {
        await comes(27);
        raised += 1;
        const happening = happens();
        await soon(async () => expect(await count('alarm_occurrence'), fault).toBe(raised));
        await happening;
        await comes(25);
        await soon(async () => expect(await count("alarm_event WHERE kind = 'returned'"), fault).toBe(raised));
      }
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
    if (ROUNDS > 1) console.log(`${raised} faults, ${raised} alarms, messages per call: at most ${Math.max(...told)}`);
  },
  120_000 * ROUNDS,
);
