import { setTimeout as wait } from 'node:timers/promises';
import { closePool, pointAt } from '#data/pool';
import { ask } from '../_support/database';
import { type Gateway, sendSteadily } from './gateway';
import { killInTurn, until } from './kill-in-turn';
import { openPages } from './live-pages';
import { type Count, countLoad, quantile } from './load-count';
import { makeLoadSite } from './load-site';
import { type Stretch, tableOf } from './load-table';
import { watchMemory } from './memory';
import { startHoldfast } from './running';

// `npm run load -- [SECONDS] [KILLS]`: Holdfast as `npm start` starts it, over a folder that is thrown away, with live pages
// open; 500 readings a second are sent for so many seconds, an alarm a second among them, and then as long as it takes to kill
// web, worker and database in turn, KILLS times in all. Says a table. Ends with 0 when nothing that was answered as stored is
// missing, no alarm was missed or raised twice, the web process ended soon with its pages open, and, of a minute or more
// without kills, 99 of 100 alarms were told within a second.

const seconds = Number(process.argv[2] ?? 300);
const kills = Number(process.argv[3] ?? 6);
const RATE = 500;
const PAGES = 5;
/** s within which 99 of 100 alarms are told, and how many there must be to say so. */
const SOON_S = 1;
const ENOUGH_ALARMS = 60;
/** s in which a web process that is asked to end has ended. It would be killed after 10. */
const END_S = 5;
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
  const { web, worker, database } = running;
  const steady = await stretch('steady', async () => {
    await wait(seconds * 1000);
  });
  const killed = await stretch('killed', async (gateway) => {
    const goOn = async () => {
      const before = gateway.answered.size;
      await until(() => gateway.answered.size >= before + ENOUGH, 'no further reading was answered');
    };
    await goOn();
    if (kills > 0) console.log(`kills: ${JSON.stringify(await killInTurn([web, worker, database], kills, goOn))}`);
  });
  const endS = await endOfWeb();
  console.log(tableOf([steady, killed]).join('\n'));
  console.log(`a web process with ${PAGES} pages open ended ${endS.toFixed(1)} s after it was asked to`);
  const soon = quantile(steady.count.toldS, 0.99);
  const isSoon = steady.count.crossings < ENOUGH_ALARMS || soon < SOON_S;
  if (!isSoon) console.log(`99 of 100 alarms were told within ${soon.toFixed(2)} s, not ${SOON_S} s`);
  return isSoon && endS < END_S && [steady, killed].every(({ count }) => isClean(count)) ? 0 : 1;
}

/** Asks the web process to end while pages are open. @returns s it took */
async function endOfWeb(): Promise<number> {
  const site = await makeLoadSite('ending');
  const pages = openPages(running.address, site, PAGES);
  await until(() => pages.told.every(({ length }) => length > 0), 'a live page was told nothing');
  const pid = running.web.pid() ?? 0;
  const began = performance.now();
  process.kill(pid, 'SIGTERM');
  await until(() => running.web.pid() !== pid, 'the web process did not end');
  pages.stop();
  return (performance.now() - began) / 1000;
}

/** Sends to a site of its own while something is done, and counts. */
async function stretch(key: string, work: (gateway: Gateway) => Promise<void>): Promise<Stretch> {
  const site = await makeLoadSite(key);
  const pages = openPages(running.address, site, PAGES);
  const began = performance.now();
  const gateway = sendSteadily(running.address, site, RATE);
  const memory = watchMemory([running.web, running.worker]);
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
  return { key, count, tookS, again: gateway.again, tookMs: gateway.tookMs, peaks: memory.stop() };
}

function isClean({ missing, twice, missed, doubled, strange, waiting, crossings }: Count): boolean {
  return missing.length + twice + missed.length + doubled.length + strange + waiting === 0 && crossings > 0;
}
