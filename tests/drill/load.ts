import { setTimeout as wait } from 'node:timers/promises';
import { closePool, pointAt } from '#data/pool';
import { ask } from '../_support/database';
import { type Gateway, sendSteadily } from './gateway';
import { killInTurn, until } from './kill-in-turn';
import { openPages } from './live-pages';
import { type Count, countLoad, quantile } from './load-count';
import { makeLoadSite } from './load-site';
import { startHoldfast } from './running';

// `npm run load -- [SECONDS] [KILLS]`: Holdfast as `npm start` starts it, over a folder that is thrown away, with live pages
// open; 500 readings a second are sent for so many seconds, an alarm a second among them, and then as long as it takes to kill
// web, worker and database in turn, KILLS times in all. Ends with 0 when nothing that was answered as stored is missing, no
// alarm was missed or raised twice, and without kills 99 of 100 were told within a second.

const seconds = Number(process.argv[2] ?? 300);
const kills = Number(process.argv[3] ?? 6);
const RATE = 500;
const PAGES = 5;
/** s within which 99 of 100 alarms are told. */
const SOON_S = 1;
/** Readings that must be answered after a kill for it to go on. */
const ENOUGH = 2000;
/** ms in which what arrived last is judged. */
const REST_MS = 30_000;

const running = await startHoldfast();
try {
  pointAt(running.url);
  process.exitCode = await load();
} finally {
  await closePool();
  await running.stop();
}

async function load(): Promise<number> {
  const steady = await stretch('steady', async () => {
    await wait(seconds * 1000);
  });
  const soon = quantile(steady.toldS, 0.99);
  if (!(soon < SOON_S)) console.log(`99 of 100 alarms were told within ${soon.toFixed(2)} s, not ${SOON_S} s`);
  const { web, worker, database } = running;
  const killed = await stretch('killed', async (gateway) => {
    const goOn = async () => {
      const before = gateway.answered.size;
      await until(() => gateway.answered.size >= before + ENOUGH, 'no further reading was answered');
    };
    await goOn();
    if (kills > 0) console.log(`kills: ${JSON.stringify(await killInTurn([web, worker, database], kills, goOn))}`);
  });
  return soon < SOON_S && [steady, killed].every(isClean) ? 0 : 1;
}

/** Sends to a site of its own while something is done, and counts. */
async function stretch(key: string, work: (gateway: Gateway) => Promise<void>): Promise<Count> {
  const site = await makeLoadSite(key);
  const pages = openPages(running.address, site, PAGES);
  const began = performance.now();
  const gateway = sendSteadily(running.address, site, RATE);
  await work(gateway);
  await gateway.stop();
  const tookS = (performance.now() - began) / 1000;
  const query = (sql: string, values?: unknown[]) => ask(running.url, sql, values);
  for (let waitedMs = 0; waitedMs < REST_MS; waitedMs += 500) {
    await wait(500);
    const { rows } = await query('SELECT count(*)::int AS n FROM reading_arrival');
    if (rows[0].n === 0) break;
  }
  // What was judged last is still to be told.
  await wait(1000);
  pages.stop();
  const count = await countLoad(query, site, gateway, pages.told);
  for (const one of count.missed) console.log(`  missed: ${one}`);
  for (const line of linesOf(key, count, gateway, tookS)) console.log(line);
  return count;
}

function isClean({ missing, missed, doubled, strange, waiting, crossings }: Count): boolean {
  return missing.length + missed.length + doubled.length + strange + waiting === 0 && crossings > 0;
}

function linesOf(key: string, count: Count, { tookMs, again }: Gateway, tookS: number): string[] {
  const both = (values: readonly number[]) =>
    `${quantile(values, 0.5).toFixed(2)} s at the 50th, ${quantile(values, 0.99).toFixed(2)} s at the 99th (${values.length})`;
  return [
    `${key}: ${count.answered} readings answered as stored in ${tookS.toFixed(0)} s, ${(count.answered / tookS).toFixed(0)} a second; ${count.missing.length} missing`,
    `  a body was answered in ${quantile(tookMs, 0.5).toFixed(0)} ms at the 50th, ${quantile(tookMs, 0.99).toFixed(0)} ms at the 99th; ${again} were sent again`,
    `  alarms: ${count.crossings} called for, ${count.missed.length} missed, ${count.doubled.length} doubled, ${count.strange} strange, ${count.waiting} batches not judged`,
    `  from arrival to raised: ${both(count.raisedS)}`,
    `  from arrival to the last of ${PAGES} pages: ${both(count.toldS)}`,
  ];
}
