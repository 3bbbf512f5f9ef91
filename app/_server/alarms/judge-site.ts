import 'server-only';
import type { Around } from '#core/alarms/condition';
import { beginWatch, hold, type Seen, type Watch } from '#core/alarms/is-true';
import { type Gone, passSite, type SeenOf, type Watched } from '#core/alarms/pass-site';
import { setBack } from '#core/alarms/set-back';
import { isSetBack } from '#core/time/set-back';
import { takeArrivals } from '#data/alarms/arrivals';
import { availableS } from '#data/alarms/available';
import { endTurn, takeTurn } from '#data/alarms/turn';
import { forgetWatches, loadWatches, saveWatches, type StoredWatch } from '#data/alarms/watches';
import { type Latest, latestJudgedOf } from '#data/readings/series';
import { inLightTransaction } from '#data/light-transaction';
import { statesBySystem } from '#data/states/states';
import { aroundOf } from './around';
import { type DefinedSite, definedAlarms } from './defined-alarms';
import { Doings } from './doings';
import { passClocks } from './second-clock';

/** ms after which a site that nobody judged counts as not listened to. It is looked at each half minute. */
const AWAY_MS = 90_000;
/** Age, ms, up to which the newest reading says something of an alarm that is begun. Common practice, no source. */
const FRESH_MS = 15 * 60_000;

/** What came of a turn. */
export interface Judged {
  /** Whether it was had at all: another worker may be at it. */
  isDone: boolean;
  /** Batches of readings that were judged, and whether more may be waiting. */
  batches: number;
  isMore: boolean;
}

/**
 * Judges the alarms of a site: holds them to what arrived and to the clock, raises and ends, calls and calls again. It is one
 * transaction, and what arrived is removed in it: broken off anywhere, none of it happened, and whoever comes next does it.
 *
 * @param siteId   the site
 * @param at       the present
 */
export async function judgeSite(siteId: string, at: Date): Promise<Judged> {
  return await inLightTransaction(async (tx) => {
    const turn = await takeTurn(tx, siteId, at);
    const site = turn && (await definedAlarms(tx, siteId, turn.revision));
    if (!site) return { isDone: false, batches: 0, isMore: false };
    const { ids, seen, gone: lost, isMore } = await takeArrivals(tx, siteId);
    const doings = await Doings.begin(tx, siteId, site, at);
    const stored = await loadWatches(tx, siteId);
    const moved = setAllBack(site, stored, doings, turn.judgedAt, at);
    await doings.passSuppressed(await statesBySystem(tx, siteId));
    const gone = endGone(site, stored, doings);
    const begun = await beginNew(siteId, site, stored, at);
    const until = isMore ? heardUntil(seen, turn.judgedAt, at) : at;
    const wasAway = turn.judgedAt === null || until.getTime() - turn.judgedAt.getTime() > AWAY_MS;
    const around = await aroundOf(tx, siteId, site, at);
    const all = { site, stored, doings, until, wasAway, around, lost: namedGone(lost, site) };
    const changed = passAll(all, named(seen, site));
    passClocks(site, doings, stored, at, await availableS(tx, siteId, doings.clocksDue()));
    await doings.tell();
    const written = new Set([...moved, ...begun, ...changed]);
    await forgetWatches(tx, siteId, gone);
    await saveWatches(
      tx,
      siteId,
      [...written].flatMap((id) => stored.get(id) ?? []),
    );
    await doings.keep();
    await endTurn(tx, siteId, { revision: site.revision, at: until, arrivals: ids });
    return { isDone: true, batches: ids.length, isMore };
  });
}

/**
 * The instant up to which a turn knows what came, while more is waiting: what has not been read yet may end what is pending, or
 * break a silence, so the clock passes no further.
 */
function heardUntil(seen: readonly SeenOf[], before: Date | null, at: Date): Date {
  const cameMs = seen.reduce((latest, one) => Math.max(latest, one.cameMs), before?.getTime() ?? 0);
  return new Date(Math.min(cameMs, at.getTime()));
}

/** Where the clock was set back since the last turn, nothing that goes by it is put off. @returns alarms that stand elsewhere now */
function setAllBack(
  site: DefinedSite,
  stored: Map<string, StoredWatch>,
  doings: Doings,
  judgedAt: Date | null,
  at: Date,
): string[] {
  const byMs = judgedAt === null ? 0 : judgedAt.getTime() - at.getTime();
  if (judgedAt === null || !isSetBack(judgedAt.getTime(), at.getTime())) return [];
  doings.times.setBack(byMs);
  for (const [id, one] of stored) {
    const condition = site.alarms.get(id)?.condition;
    if (condition) stored.set(id, { ...one, watch: setBack(condition, one.watch, byMs) });
  }
  return [...stored.keys()];
}

/** Ends what is defined no more, or otherwise. @returns alarms that are gone */
function endGone(site: DefinedSite, stored: Map<string, StoredWatch>, doings: Doings): string[] {
  const gone: string[] = [];
  for (const [alarm, { occurrenceId, definition }] of [...stored]) {
    const now = site.alarms.get(alarm);
    if (now?.condition && now.print === definition) continue;
    if (occurrenceId !== null) doings.end(occurrenceId, now ? 'definition-changed' : 'retired');
    stored.delete(alarm);
    if (!now?.condition) gone.push(alarm);
  }
  return gone;
}

/**
 * Begins what is defined and not watched yet, or no longer as it was: from the newest reading of its sensor, or, where such
 * wait that no alarm was held to, before the oldest of these, so that none is skipped.
 *
 * @returns   alarms that were begun
 */
async function beginNew(
  siteId: string,
  site: DefinedSite,
  stored: Map<string, StoredWatch>,
  at: Date,
): Promise<string[]> {
  const wanted = [...site.alarms.values()].filter(({ id, condition }) => condition !== null && !stored.has(id));
  if (wanted.length === 0) return [];
  const latest = new Map([...(await latestJudgedOf(siteId))].map(([id, one]) => [site.sensorNames.get(id), one]));
  for (const { id, condition, print } of wanted) {
    if (condition === null) continue;
    let watch: Watch = beginWatch(condition, at.getTime());
    const newest = condition.kind === 'limits' && !condition.of ? seenOf(latest.get(condition.sensor), at) : null;
    // Not raised by it at once: where that is due, the clock does it in the same turn.
    if (newest)
      watch = hold({ ...condition, delayS: Math.max(condition.delayS, 0.001) }, watch, newest).at(-1)?.watch ?? watch;
    stored.set(id, { alarmId: id, watch, occurrenceId: null, definition: print });
  }
  return wanted.map(({ id }) => id);
}

function seenOf(latest: Latest | undefined, at: Date): Seen | null {
  if (!latest || latest.origin === 'file' || at.getTime() - latest.atMs > FRESH_MS) return null;
  const { value, quality, origin, receivedAtMs: cameMs } = latest;
  return { atMs: Math.min(latest.atMs, cameMs), cameMs, value, quality, isByHand: origin === 'hand' };
}

/** Readings with the name of their sensor; those of one that is gone are passed over. */
function named(seen: readonly SeenOf[], { sensorNames }: DefinedSite): SeenOf[] {
  return seen.flatMap((one) => {
    const sensor = sensorNames.get(one.sensor);
    return sensor === undefined ? [] : [{ ...one, sensor }];
  });
}

/** What is gone, with the names of the sensors. */
function namedGone(gone: readonly Gone[], { sensorNames }: DefinedSite): Gone[] {
  return gone.map(({ sensors, cameMs }) => ({ sensors: sensors.flatMap((id) => sensorNames.get(id) ?? []), cameMs }));
}

interface All {
  site: DefinedSite;
  stored: Map<string, StoredWatch>;
  doings: Doings;
  /** The instant up to which is judged. */
  until: Date;
  wasAway: boolean;
  around: Around;
  /** What was said to be gone. */
  lost: Gone[];
}

/** Holds every alarm to what came. @returns alarms that stand elsewhere now */
function passAll({ site, stored, doings, until, wasAway, around, lost }: All, seen: readonly SeenOf[]): string[] {
  const watched: Watched[] = [...stored].flatMap(([alarm, { watch }]) => {
    const condition = site.alarms.get(alarm)?.condition;
    return condition ? [{ alarm, condition, watch }] : [];
  });
  const { changed, turns } = passSite(watched, seen, until.getTime(), wasAway, around, lost);
  for (const { alarm, watch } of changed) {
    const was = stored.get(alarm);
    if (was) stored.set(alarm, { ...was, watch });
  }
  for (const { alarm, turn } of turns) {
    const [was, defined] = [stored.get(alarm), site.alarms.get(alarm)];
    if (!(was && defined)) continue;
    if (turn.kind === 'raised') stored.set(alarm, { ...was, occurrenceId: doings.raise(defined, turn) });
    else {
      if (was.occurrenceId !== null) doings.end(was.occurrenceId, turn);
      stored.set(alarm, { ...was, occurrenceId: null });
    }
  }
  return changed.map(({ alarm }) => alarm);
}
