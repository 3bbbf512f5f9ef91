import { setTimeout as wait } from 'node:timers/promises';
import type { Copy } from '../_support/database';
import { aSource } from '../_support/sources';
import { smallSystem } from '../_support/small-facility';
import { alarmSite, always, SENSOR, warm, withAlarms } from '../server/alarms/alarm-site';
import type { Sent } from './fault-ledger';

/** ms after a body that was not answered. */
const AGAIN_MS = 100;
const PATIENCE_MS = 5000;
const DAY_MS = 86_400_000;
/** °C: as it is, and beyond the limit. */
export const USUAL_C = 25;
const WARM_C = 27;
/** Readings of a large body: judging them takes a moment. */
const MANY = 4000;

/** A site with one alarm that Robin answers, and a source that sends by HTTP. */
export interface FaultSite {
  siteId: string;
  sent: Sent;
  /** Sends one reading taken now until it is answered as stored. */
  comes: (value: number) => Promise<void>;
  /** Sends many of the seconds before now, all as it is, and one beyond the limit as the last. */
  manyCome: () => Promise<void>;
  /** Sends what was sent last ten times more, four at once. */
  sameComes: () => Promise<void>;
  /** Sends readings of the day before, beyond the limit, the newest first. */
  yesterdayComes: () => Promise<void>;
}

/** @param address   where Holdfast answers */
export async function makeFaultSite(query: Copy['query'], address: string): Promise<FaultSite> {
  const site = await alarmSite(query, withAlarms([warm({ deadBand: 0 })], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  const { token } = await aSource(site.siteId);
  const name = `${smallSystem().key}/${SENSOR}`;
  const answered = new Map<number, number>();
  const crossings: number[] = [];
  let lastMs = 0;
  let last: [number, number][] = [];
  const send = async (readings: [number, number][]) => {
    const body = JSON.stringify(readings.map(([atMs, v]) => ({ n: name, t: atMs / 1000, v })));
    while (!(await isStored(address, token, body))) await wait(AGAIN_MS);
    for (const [atMs, value] of readings) answered.set(atMs, value);
  };
  const next = async (readings: [number, number][]) => {
    const crossing = readings.find(([, value]) => value === WARM_C);
    if (crossing) crossings.push(crossing[0]);
    last = readings;
    lastMs = readings.at(-1)?.[0] ?? lastMs;
    await send(readings);
  };
  const nowMs = () => Math.max(Date.now(), lastMs + 1);
  return {
    siteId: site.siteId,
    sent: { answered, crossings },
    comes: async (value) => await next([[nowMs(), value]]),
    manyCome: async () => {
      const from = lastMs + 1;
      const usual = Array.from({ length: MANY }, (_, i): [number, number] => [from + i, USUAL_C]);
      const until = from + MANY;
      await wait(Math.max(0, until - Date.now()));
      await next([...usual, [until, WARM_C]]);
    },
    sameComes: async () => {
      for (const at of [4, 4, 2]) await Promise.all(Array.from({ length: at }, () => send(last)));
    },
    yesterdayComes: async () => {
      const before = Array.from({ length: 20 }, (_, i): [number, number] => [lastMs - DAY_MS - i * 1000, WARM_C + 1]);
      await send(before);
    },
  };
}

/** @returns whether every record was stored, or had been */
async function isStored(address: string, token: string, body: string): Promise<boolean> {
  try {
    const response = await fetch(`${address}/api/readings`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/senml+json' },
      body,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (response.status !== 200) return false;
    const { records } = (await response.json()) as { records: { result: string }[] };
    return records.every(({ result }) => result === 'stored' || result === 'repeat');
  } catch {
    return false;
  }
}
