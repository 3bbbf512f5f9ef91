import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setTimeout as wait } from 'node:timers/promises';
import { closePool, pointAt } from '#data/pool';
import { ROOT } from '../../app/_start/places.mjs';
import { ask } from '../_support/database';
import { count, whatIsWrong } from './fault-ledger';
import { makeFaultSite, type FaultSite, USUAL_C } from './fault-site';
import { killInTurn, type Victim } from './kill-in-turn';
import { startMailGate } from './mail-gate';
import { startHoldfast } from './running';

// `npm run faults -- [N] [WHICH]`: Holdfast as `npm start` starts it, over a folder that is thrown away, with a second worker. N rounds of:
// an alarm is to be raised while a worker, the web process or the database is killed, the database cuts everybody off, the mail
// server is away, the clock steps, and the same comes ten times or a day late. Ends with 0 when nothing that was answered as
// stored is missing, no alarm was missed or raised twice, and each told somebody. WHICH is a part of the name of what happens.

const rounds = Number(process.argv[2] ?? 3);
const which = process.argv[3] ?? '';
/** ms the mail server is away: longer than the first pauses between two attempts, as an hour is. */
const AWAY_MS = 30_000;
/** ms the clock is wrong. */
const WRONG_MS = 3000;
const PATIENCE_MS = 60_000;
/** ms within which every process sees that its clock was set. */
const SEEN_MS = 1000;

const scratch = mkdtempSync(join(tmpdir(), 'holdfast-faults-'));
const clock = join(scratch, 'ahead-ms');
const mail = await startMailGate();
process.env.HOLDFAST_MAIL_URL = mail.url;
process.env.HOLDFAST_DRILL_CLOCK = clock;
const plain = process.env.NODE_OPTIONS ?? '';
process.env.NODE_OPTIONS = `${plain} --import=${pathToFileURL(join(ROOT, 'tests/drill/stepped-clock.mjs')).href}`;
const running = await startHoldfast();
/** Under a name of its own, so that the drill does not cut itself off. */
const asker = new URL(running.url);
asker.searchParams.set('application_name', 'drill');
const query = (sql: string, values?: unknown[]) => ask(asker.href, sql, values);
let second: ChildProcess | undefined;
let isOver = false;

try {
  pointAt(running.url);
  process.exitCode = await drill();
} finally {
  isOver = true;
  second?.kill('SIGKILL');
  await closePool();
  await running.stop();
  await mail.close();
  rmSync(scratch, { recursive: true, force: true });
}

/** A second worker beside that of the supervisor, started again when it was killed. */
function keepWorker(): Victim {
  const begin = () => {
    const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/worker/main.ts'];
    second = spawn(process.execPath, args, {
      cwd: ROOT,
      env: { ...process.env, DATABASE_URL: running.url },
      stdio: 'ignore',
    });
    second.on('exit', () => {
      if (!isOver) begin();
    });
  };
  begin();
  return { name: 'second worker', pid: () => second?.pid };
}

async function step(aheadMs: number): Promise<void> {
  writeFileSync(clock, String(aheadMs));
  await wait(WRONG_MS);
  writeFileSync(clock, '0');
  // What comes before every process has seen it would still be told by the wrong clock, and nothing comes after it.
  await wait(SEEN_MS);
}

/** What happens to it, by name. @param site   what sends */
function faultsOf(site: FaultSite, other: Victim): Readonly<Record<string, () => Promise<void>>> {
  const { web, worker, database } = running;
  const killed = (victim: Victim) => async () => {
    await killInTurn([victim], 1, async () => undefined);
  };
  return {
    'a worker is killed': killed(worker),
    'the other worker is killed': killed(other),
    'the web process is killed': killed(web),
    'the database is killed': killed(database),
    'the database cuts everybody off': async () => {
      await query(
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = current_user AND application_name <> 'drill'",
      );
    },
    'the mail server is away': async () => {
      mail.setAway(true);
      await wait(AWAY_MS);
      mail.setAway(false);
    },
    'the clock is half an hour ahead, and right again': () => step(1_800_000),
    'the clock is two minutes behind, and right again': () => step(-120_000),
    'the same comes ten times': site.sameComes,
    'the day before comes': site.yesterdayComes,
  };
}

async function drill(): Promise<number> {
  const site = await makeFaultSite(query, running.address);
  const other = keepWorker();
  await site.comes(USUAL_C);
  const { crossings, answered } = site.sent;
  for (let round = 1; round <= rounds; round++) {
    for (const [name, happens] of Object.entries(faultsOf(site, other)).filter(([one]) => one.includes(which))) {
      const began = performance.now();
      await site.manyCome();
      const happening = happens();
      await soon(async () => (await count(query, 'alarm_occurrence')) >= crossings.length, `not raised: ${name}`);
      const raisedS = (performance.now() - began) / 1000;
      await happening;
      await site.comes(USUAL_C);
      const returned = "alarm_event WHERE kind = 'returned'";
      await soon(async () => (await count(query, returned)) >= crossings.length, `not ended: ${name}`);
      console.log(`round ${round}: ${name}: raised after ${raisedS.toFixed(1)} s`);
    }
  }
  const waiting =
    "alarm_call c WHERE NOT EXISTS (SELECT FROM alarm_call_try t WHERE t.call_id = c.id AND t.result = 'taken')";
  await soon(async () => (await count(query, waiting)) === 0, 'a call was not made');
  const wrong = await whatIsWrong(query, site.siteId, mail, site.sent);
  console.log(`${crossings.length} alarms, ${answered.size} readings, ${mail.taken.length} messages`);
  for (const line of wrong) console.log(`WRONG: ${line}`);
  return wrong.length === 0 ? 0 : 1;
}

/** Waits until it is so; what the database does not answer meanwhile is asked again. */
async function soon(isSo: () => Promise<boolean>, words: string): Promise<void> {
  const began = performance.now();
  while (!(await isSo().catch(() => false))) {
    if (performance.now() - began > PATIENCE_MS) throw new Error(words);
    await wait(50);
  }
}
