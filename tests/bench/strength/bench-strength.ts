import { setTimeout as wait } from 'node:timers/promises';
import { closePool, pointAt } from '#data/pool';
import { ask } from '../../_support/database';
import { anAccount, headersOf } from '../../_support/signed-in';
import { openPages } from '../../drill/live-pages';
import { quantile } from '../../drill/load-count';
import { watchMemory } from '../../drill/memory';
import { type Running, startHoldfast } from '../../drill/running';
import { countCpu, type Used } from './cpu';
import { heavyBodies } from './heavy';
import { giveReviews, skipReviews } from './reviews';
import { send, type Sent } from './sending';
import { makeSite, type StrengthSite, SYSTEMS } from './sites';

/** Sites of fifty systems of twenty sensors. */
const SITES = 20;
const SENSORS = 20;
/** s for which reviews that were under way are waited for at most. */
const REVIEWS_S = 240;
/** s after them until everything else is at rest. */
const SETTLE_S = 5;
const PAGES = 5;
/** ms between two looks at a page. */
const LOOK_MS = 500;
/** Looks at every row, afterwards. */
const WHOLE_LOOKS = 20;

const CALLED = `
  SELECT r.sensor_id || ' ' || (extract(epoch FROM r."at") * 1000)::float8 AS key,
         extract(epoch FROM e.at - r.received_at)::float8 AS "raisedS", extract(epoch FROM c.made_at - r.received_at)::float8 AS "calledS"
    FROM alarm_occurrence o
    JOIN alarm_event e ON e.site_id = o.site_id AND e.occurrence_id = o.id AND e.kind = 'raised'
    JOIN alarm_definition d ON d.site_id = o.site_id AND d.id = o.alarm_id
    JOIN sensor s ON s.site_id = o.site_id AND s.system_id = d.system_id AND s.key = 's-0'
    JOIN reading r ON r.site_id = o.site_id AND r.sensor_id = s.id AND r."at" = o.began_at
    LEFT JOIN LATERAL (SELECT min(made_at) AS made_at FROM alarm_call c
                        WHERE c.site_id = o.site_id AND c.occurrence_id = o.id) c ON true`;
const WAITING = `
  SELECT (SELECT count(*) FROM reading_arrival)::int AS arrivals, (SELECT count(*) FROM reading_touched)::int AS touched,
         (SELECT count(*) FROM reading r JOIN derived_series d ON d.site_id = r.site_id AND d.id = r.sensor_id)::int AS derived`;

/**
 * A thousand systems of twenty sensors every ten seconds, sent to Holdfast as `npm start` runs it, with pages open and looked at.
 *
 * @param seconds   for how long
 */
export async function benchStrength(seconds: number): Promise<string[]> {
  const running = await startHoldfast();
  try {
    pointAt(running.url);
    const sites: StrengthSite[] = [];
    for (let n = 0; n < SITES; n++) sites.push(await makeSite(n));
    const cookie = (await headersOf(await anAccount({ everywhere: 'admin' }))).get('cookie') ?? '';
    await giveReviews(running.url);
    const unreviewed = await untilReviewed(running.url);
    const lines = await loaded(running, sites, cookie, seconds);
    if (unreviewed > 0)
      lines.push(`  reviews of ${unreviewed} sites went on meanwhile: the machine was not at rest before`);
    return [...lines, ...(await heavyBodies(running, sites))];
  } finally {
    await closePool();
    await running.stop();
  }
}

/**
 * Waits until nothing is reviewed or studied any more: who has just described a thousand systems is not what is measured.
 *
 * @returns   what is still under way
 */
async function untilReviewed(url: string): Promise<number> {
  const until = Date.now() + REVIEWS_S * 1000;
  for (;;) {
    await wait(1000);
    const count = await skipReviews(url);
    if (count > 0 && Date.now() < until) continue;
    await wait(SETTLE_S * 1000);
    return count;
  }
}

async function loaded(
  running: Running,
  sites: readonly StrengthSite[],
  cookie: string,
  seconds: number,
): Promise<string[]> {
  const { address, web, worker, url } = running;
  const looking = lookAt(`${address}/`, cookie);
  const pages = sites.slice(0, PAGES).map((site) => openPages(address, { ...site, cookie, probes: [] }, 1));
  // The second half is held against the first: what grows with time shows between them.
  const halves = [];
  const cpu = countCpu(running);
  for (const _half of [1, 2]) {
    const memory = watchMemory([web, worker]);
    const sent = await send(address, sites, Math.ceil(seconds / 2));
    halves.push({ sent, peaks: memory.stop() });
  }
  await wait(5000);
  const used = cpu();
  for (const page of pages) page.stop();
  const overview = await looking.stop();
  const whole = await looksAt(`${address}/?show=all`, cookie, WHOLE_LOOKS);
  const { rows: called } = await ask(url, CALLED);
  const { rows: waiting } = await ask(url, WAITING);
  return said({ halves, called, waiting: waiting[0], overview, whole, used }, seconds);
}

interface Measured {
  halves: { sent: Sent; peaks: Record<string, number> }[];
  called: { key: string; raisedS: number; calledS: number | null }[];
  waiting: { arrivals: number; touched: number; derived: number };
  /** ms that each look at the overview took. */
  overview: number[];
  /** ms that it took with every row, once nothing was sent any more. */
  whole: number[];
  used: Used;
}

function said({ halves, called, waiting, overview, whole, used }: Measured, seconds: number): string[] {
  const sent = halves.map((half) => half.sent);
  const readings = sent.reduce((sum, one) => sum + one.readings, 0);
  const failed = sent.reduce((sum, one) => sum + one.failed, 0);
  const warm = sent.flatMap((one) => one.warm);
  const raised = new Set(called.map(({ key }) => key));
  const missed = warm.filter(({ sensor, atMs }) => !raised.has(`${sensor} ${atMs}`)).length;
  const both = (values: number[], digits: number) =>
    [0.5, 0.99].map((part) => quantile(values, part).toFixed(digits)).join(', ');
  const calls = called.flatMap(({ calledS }) => calledS ?? []);
  return [
    `Strength: ${SITES * SYSTEMS} systems of ${SENSORS} sensors every 10 s for ${seconds} s, ${PAGES} live pages, the overview looked at`,
    `  stored ${(readings / seconds).toFixed(0)} readings/s (aim: 2000); bodies not stored whole ${failed}${sent.map((one) => (one.firstFailure ? `, ${one.firstFailure}` : '')).join('')}`,
    `  a body answered in ms, 50th and 99th: ${both(
      sent.flatMap((one) => one.tookMs),
      0,
    )}`,
    `  alarms called for ${warm.length}, missed ${missed}, raised ${called.length}`,
    `  arrival to raised, s, 50th and 99th: ${both(
      called.map(({ raisedS }) => raisedS),
      2,
    )} (aim: 99th under 1)`,
    `  arrival to the call in its outbox, s, 50th and 99th: ${both(calls, 2)}, of ${calls.length}`,
    `  overview in ms, 50th and 95th: ${quantile(overview, 0.5).toFixed(0)}, ${quantile(overview, 0.95).toFixed(0)} (aim: 95th under 150); with every row, afterwards: ${both(whole, 0)}`,
    `  left at the end: ${waiting.arrivals} batches to be judged, ${waiting.touched} to be settled; derived ${waiting.derived}`,
    `  ms of processor a thousand readings: ${(['web', 'worker', 'database'] as const)
      .map((name) => `${name} ${((used[name] * 1e6) / readings).toFixed(0)}`)
      .join(', ')}`,
    ...['web', 'worker'].map(
      (name) =>
        `  memory of ${name}, MiB, first and second half: ${halves.map(({ peaks }) => (peaks[name] ?? Number.NaN).toFixed(0)).join(', ')}`,
    ),
  ];
}

/** Asks for a page again and again. */
function lookAt(address: string, cookie: string): { stop: () => Promise<number[]> } {
  const tookMs: number[] = [];
  let isOver = false;
  const looking = (async () => {
    while (!isOver) {
      tookMs.push(await lookedAt(address, cookie));
      await wait(LOOK_MS);
    }
  })();
  return {
    stop: async () => {
      isOver = true;
      await looking;
      return tookMs;
    },
  };
}

/** Asks for a page so many times. @returns ms that each took */
async function looksAt(address: string, cookie: string, count: number): Promise<number[]> {
  const tookMs: number[] = [];
  for (let n = 0; n < count; n++) tookMs.push(await lookedAt(address, cookie));
  return tookMs;
}

/** Asks for a page. @returns ms until it was there */
async function lookedAt(address: string, cookie: string): Promise<number> {
  const began = performance.now();
  const response = await fetch(address, { headers: { cookie } });
  await response.text();
  if (response.status !== 200) throw new Error(`the overview was answered ${response.status}`);
  return performance.now() - began;
}
