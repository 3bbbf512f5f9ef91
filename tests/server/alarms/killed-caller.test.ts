import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Server } from 'node:net';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { storeReadings } from '#data/readings/store-readings';
import { ROOT } from '../../../app/_start/places.mjs';
import { freshDatabase } from '../../_support/database';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { alarmSite, always, SENSOR, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const workers: ChildProcess[] = [];
let mail: MailServer;
/** Stands before the mail server: takes the first connection and says nothing on it. */
let gate: Server;
let connections = 0;

beforeAll(async () => {
  mail = await startMailServer();
  gate = createServer((socket) => {
    socket.on('error', () => undefined);
    connections += 1;
    if (connections === 1) return;
    const onward = connect(Number(new URL(mail.url).port), '127.0.0.1').on('error', () => socket.destroy());
    socket.pipe(onward).pipe(socket);
  });
  gate.listen(0, '127.0.0.1');
  await once(gate, 'listening');
});
afterAll(async () => {
  for (const worker of workers) worker.kill('SIGKILL');
  gate.close();
  await mail.close();
});

function startWorker(): ChildProcess {
  const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/worker/main.ts'];
  const { port } = gate.address() as AddressInfo;
  const env = { ...process.env, HOLDFAST_MAIL_URL: `smtp://127.0.0.1:${port}` };
  const worker = spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'ignore', 'inherit'] });
  workers.push(worker);
  return worker;
}

test('whoever a worker was telling when it was killed is told by the next one, long before the first counts as gone', async () => {
  const site = await alarmSite(query, withAlarms([warm()], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  const { rows } = await query('SELECT id FROM sensor WHERE key = $1', [SENSOR]);
  const at = new Date();
  const reading = { sensorId: String(rows[0]?.id), at, value: 27, quality: 'good', origin: 'device' } as const;
  await storeReadings(site.siteId, [reading], { receivedAt: at });
  const first = startWorker();
  await vi.waitFor(() => expect(connections).toBe(1), { timeout: 40_000, interval: 20 });
  // It holds the job, and has told nobody.
  expect((await query('SELECT 1 FROM graphile_worker._private_jobs WHERE locked_by IS NOT NULL')).rows).not.toEqual([]);
  first.kill('SIGKILL');
  await once(first, 'exit');
  startWorker();
  await vi.waitFor(() => expect(mail.taken).toHaveLength(1), { timeout: 45_000, interval: 50 });
  expect(mail.taken[0]?.to).toEqual(['robin@example.org']);
  const tries = async () => (await query('SELECT result FROM alarm_call_try')).rows;
  await vi.waitFor(async () => expect(await tries()).toEqual([{ result: 'taken' }]), { timeout: 10_000, interval: 50 });
}, 120_000);
