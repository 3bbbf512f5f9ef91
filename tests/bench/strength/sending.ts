import { setTimeout as wait } from 'node:timers/promises';
import { type StrengthSite, SYSTEMS, USUAL, WARM_C } from './sites';

/** s from one reading of a sensor to the next, and so the bodies in which a site's are sent, one a second. */
const EVERY_S = 10;
/** A second in how many one system of a site becomes warm for one reading. */
const WARM_EVERY_S = 5;

/** What came of sending. */
export interface Sent {
  readings: number;
  /** ms until a body was answered. */
  tookMs: number[];
  /** Bodies that were not answered with all of it stored, and the first answer of such. */
  failed: number;
  firstFailure: string | null;
  /** Warm readings: sensor and instant. */
  warm: { sensor: string; atMs: number }[];
}

/**
 * Sends what all systems of the sites read, every ten seconds each, for some time: each second every site sends what a tenth of
 * its systems read.
 */
export async function send(address: string, sites: readonly StrengthSite[], seconds: number): Promise<Sent> {
  const sent: Sent = { readings: 0, tookMs: [], failed: 0, firstFailure: null, warm: [] };
  await Promise.all(
    sites.map(async (site, n) => {
      const began = Date.now() + (n * 1000) / sites.length;
      for (let second = 0; second < seconds; second++) {
        await wait(Math.max(0, began + second * 1000 - Date.now()));
        await body(address, site, second, sent);
      }
    }),
  );
  return sent;
}

async function body(address: string, site: StrengthSite, second: number, sent: Sent): Promise<void> {
  const atMs = Date.now();
  const share = SYSTEMS / EVERY_S;
  const from = (second % EVERY_S) * share;
  const isWarm = second % WARM_EVERY_S === 0 && second >= EVERY_S;
  const warmOne = from + (Math.floor(second / EVERY_S) % share);
  const records = site.systems.slice(from, from + share).flatMap((sensors, i) =>
    sensors.map(({ id, name, quantity }) => {
      const warm = isWarm && from + i === warmOne && quantity === 'temperature';
      if (warm) sent.warm.push({ sensor: id, atMs });
      return { n: name, t: atMs / 1000, v: warm ? WARM_C : (USUAL[quantity] ?? 0) + ((second * 7) % 10) / 100 };
    }),
  );
  const began = performance.now();
  const said = await answer(address, site.token, records);
  sent.tookMs.push(performance.now() - began);
  if (said === null) sent.readings += records.length;
  else {
    sent.failed += 1;
    sent.firstFailure ??= said;
  }
}

/** @returns null when all of it was stored; else what was answered */
async function answer(address: string, token: string, records: readonly object[]): Promise<string | null> {
  try {
    const response = await fetch(`${address}/api/readings`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/senml+json' },
      body: JSON.stringify(records),
    });
    const text = await response.text();
    const { stored } = JSON.parse(text) as { stored?: number };
    return stored === records.length ? null : `${response.status} ${text.slice(0, 300)}`;
  } catch (error) {
    return String(error);
  }
}
