import 'server-only';
import { type Stretch, stretchesTouched } from '#core/readings/roll-up';
import { type Asking, inPlainTransaction } from '#data/readings/asking';
import { daysRead, derivedRows, keepDerived } from '#data/readings/derived-series';
import { addDue, type Due, rolledHorizon } from '#data/readings/due';
import { dueAnew, keepLimits } from '#data/readings/limits';
import { noteReadingTurn, takeReadingTurn } from '#data/readings/reading-turn';
import { storeDerived } from '#data/readings/store-derived';
import { removeTouched, takeTouched, touchStretches } from '#data/readings/touched';
import { type DescribedSeries, describedSeries } from './described-series';
import { deriveTouched, type KeptSeries } from './derive-touched';

const DAY_MS = 86_400_000;
/** Days for which a series that is new is worked out for what was read before. Common practice, no source. */
const DAYS_BACK = 60;

/** Hours and days that were noted already, by when they are over: they wait until hours and days that are over then are taken. */
const noted = new Map<string, number>();
/** Of these in memory at most. */
const MOST_NOTED = 200_000;

/**
 * Settles what follows from the readings of a site that were stored since the last time: derived series, and which hours and
 * days are to be rolled up. It is one transaction, in which what was taken is removed.
 *
 * @param at   the present
 * @returns    whether another worker is at it, all is done, or more is waiting
 */
export async function settleSite(siteId: string, at: Date): Promise<'busy' | 'done' | 'more'> {
  const fresh: Due[] = [];
  const outcome = await inPlainTransaction(async (asking) => {
    fresh.length = 0;
    const turn = await takeReadingTurn(asking, siteId);
    if (turn === 'busy') return 'busy';
    const described = turn && (await describedSeries(siteId, turn.revision));
    if (!(turn && described)) return 'done';
    if (turn.settledBy !== described.revision) await putInOrder(asking, siteId, described, at);
    const { ids, touched, isMore } = await takeTouched(asking, siteId);
    const values = await deriveTouched(asking, siteId, await keptSeries(asking, siteId, described), touched);
    await storeDerived(asking, siteId, values, at);
    const spans = [
      ...touched,
      ...values.map((one) => ({ sensorId: one.sensorId, fromMs: one.at.getTime(), toMs: one.at.getTime() })),
    ];
    fresh.push(...dueOf(turn.zone, spans, await rolledHorizon(asking)));
    await addDue(asking, siteId, fresh);
    await removeTouched(asking, siteId, ids);
    return isMore ? 'more' : 'done';
  });
  remember(fresh, at);
  return outcome;
}

/** What follows from a description that is new: derived series come and go, limits change. */
async function putInOrder(asking: Asking, siteId: string, described: DescribedSeries, at: Date): Promise<void> {
  const wanted = described.derived.map(({ systemId, series: { key } }) => ({ systemId, key }));
  const made = await keepDerived(asking, siteId, wanted, at);
  const leads = made.map((one) => leadOf(described, one)).filter((id) => id !== undefined);
  const since = new Date(at.getTime() - DAYS_BACK * DAY_MS);
  for (const day of leads.length > 0 ? await daysRead(asking, siteId, leads, since) : [])
    await touchStretches(asking, siteId, [day]);
  await dueAnew(asking, siteId, await keepLimits(asking, siteId, described.limits, at));
  await noteReadingTurn(asking, siteId, described.revision);
}

function leadOf(
  { derived }: DescribedSeries,
  { systemId, key }: { systemId: string; key: string },
): string | undefined {
  return derived.find((one) => one.systemId === systemId && one.series.key === key)?.inputIds[0];
}

async function keptSeries(asking: Asking, siteId: string, { derived }: DescribedSeries): Promise<KeptSeries[]> {
  if (derived.length === 0) return [];
  const ids = new Map((await derivedRows(asking, siteId)).map(({ id, systemId, key }) => [`${systemId} ${key}`, id]));
  return derived.flatMap(({ systemId, series, inputIds }) => {
    const id = ids.get(`${systemId} ${series.key}`);
    return id === undefined ? [] : [{ id, series, inputIds }];
  });
}

/** Hours and days that something changes in, each once, without those that are known to be noted. */
function dueOf(
  zone: string,
  spans: readonly { sensorId: string; fromMs: number; toMs: number }[],
  horizonMs: number,
): Due[] {
  const found = new Map<string, Due>();
  const stretches = new Map<string, Stretch[]>();
  for (const { sensorId, fromMs, toMs } of spans) {
    const key = `${fromMs} ${toMs}`;
    const touched = stretches.get(key) ?? stretchesTouched(zone, fromMs, toMs);
    stretches.set(key, touched);
    for (const stretch of touched) {
      const name = nameOf(sensorId, stretch);
      if ((noted.get(name) ?? -Infinity) <= horizonMs) found.set(name, { sensorId, ...stretch });
    }
  }
  return [...found.values()];
}

function nameOf(sensorId: string, { isDay, fromMs }: Stretch): string {
  return `${sensorId} ${isDay} ${fromMs}`;
}

function remember(due: readonly Due[], at: Date): void {
  if (noted.size > MOST_NOTED) for (const [name, overMs] of noted) if (overMs <= at.getTime()) noted.delete(name);
  if (noted.size > MOST_NOTED) noted.clear();
  for (const one of due) noted.set(nameOf(one.sensorId, one), one.toMs);
}
