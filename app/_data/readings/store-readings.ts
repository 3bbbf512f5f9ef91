import 'server-only';
import type { Origin, Quality } from '#core/readings/reading';
import type { Transaction } from '../transaction';
import { announceArrival } from './arrivals';
import { type Asking, askingIn, codeOf, inPlainTransaction } from './asking';
import { keepLatest } from './keep-latest';
import { ensureParts, forgetParts } from './parts';
import { storeFresh } from './store-fresh';
import { touch } from './touched';
import { insertNew, insertRevisions, type KeptValue, keyOf, newestOf, type Revised } from './rows';

/** A reading that is to be stored. */
export interface NewReading {
  /** One of the site's own: whoever stores has made sure. */
  sensorId: string;
  at: Date;
  /** Finite; in the facility file's unit of the sensor's quantity. */
  value: number;
  quality: Quality;
  /** Why it is not good; absent exactly when it is. */
  reason?: string;
  /** What the source itself said of it. */
  flag?: string;
  origin: Origin;
  /** Whether it is only for the record: no alarm is held to it. */
  isOfPast?: boolean;
  /** Since when exactly this value has stood; its own instant when left out. */
  sameSince?: Date;
}

/**
 * What became of a reading. Of one sensor, instant and origin there is one value: the same again is a repeat, another is
 * a conflict and not stored, unless it was sent as a correction, which supersedes.
 */
export type Stored = 'stored' | 'repeat' | 'conflict' | 'corrected';

/** How readings are stored. */
export interface Storing {
  /** Id of the source, the file import or the entry of a round they came by. */
  cameBy?: string;
  receivedAt: Date;
  /** Whether another value supersedes what is there. */
  correct?: boolean;
  /** What else is to be kept with them or not at all. */
  also?: (asking: Asking) => Promise<void>;
}

/** The database has no part for a reading: it was taken away since it was made. */
const NO_PART = '23514';

/**
 * Stores readings of one site in a transaction of their own: all that are new, or, when it throws, none.
 *
 * @param siteId     the site
 * @param readings   in any order; the same sensor, instant and origin may come twice
 * @param storing    when they were received, by what they came, and whether they correct
 * @returns          what became of each, in the order given
 * @throws           for an instant before 1990 or more than 400 days ahead, a sensor that is no site's, a value that is
 *                   not finite, and when the database does not answer
 */
export async function storeReadings(
  siteId: string,
  readings: readonly NewReading[],
  storing: Storing,
): Promise<Stored[]> {
  if (readings.length === 0) return [];
  for (let tried = 1; ; tried++) {
    await ensureParts(readings.map(({ at }) => at));
    try {
      if (isPlain(storing) && (await storeFresh(siteId, readings, storing))) return readings.map(() => 'stored');
      return await inPlainTransaction((asking) => store(asking, siteId, readings, storing));
    } catch (error) {
      if (tried > 1 || codeOf(error) !== NO_PART) throw error;
      forgetParts();
    }
  }
}

/** Whether nothing else is to be done with them. */
function isPlain({ correct, also }: Storing): boolean {
  return correct !== true && also === undefined;
}

/**
 * Stores readings in a transaction that does something else besides, such as keep the entry of a round.
 *
 * @param tx   the transaction
 */
export async function storeReadingsIn(
  tx: Transaction,
  siteId: string,
  readings: readonly NewReading[],
  storing: Storing,
): Promise<Stored[]> {
  if (readings.length === 0) return [];
  await ensureParts(readings.map(({ at }) => at));
  return await store(askingIn(tx), siteId, readings, storing);
}

async function store(
  asking: Asking,
  siteId: string,
  readings: readonly NewReading[],
  storing: Storing,
): Promise<Stored[]> {
  // Revisions are counted: whoever corrects waits for whoever is at it.
  if (storing.correct) await asking('SELECT pg_advisory_xact_lock(hashtext($1))::text', [`correct ${siteId}`]);
  const keys = readings.map(keyOf);
  const isNew = await insertNew(asking, siteId, firstOfEach(readings, keys), storing);
  const there = await newestOf(
    asking,
    siteId,
    readings.filter((_, i) => !isNew.has(keys[i] ?? '')),
  );
  const { outcomes, revisions } = settle(readings, keys, isNew, there, storing.correct === true);
  if (revisions.length > 0) await insertRevisions(asking, siteId, revisions, storing);
  const kept = readings.filter((_, i) => outcomes[i] === 'stored' || outcomes[i] === 'corrected');
  if (kept.length > 0) {
    await keepLatest(asking, siteId, kept, new Set(revisions.map(({ sensorId }) => sensorId)), storing.receivedAt);
    await announceArrival(asking, siteId, kept, storing.receivedAt);
    await touch(asking, siteId, kept);
  }
  await storing.also?.(asking);
  return outcomes;
}

function firstOfEach(readings: readonly NewReading[], keys: readonly string[]): NewReading[] {
  const seen = new Set<string>();
  return readings.filter((_, i) => {
    const key = keys[i] ?? '';
    return !seen.has(key) && seen.add(key);
  });
}

/** What becomes of each reading, one after the other, given which were new and what stands where they were not. */
function settle(
  readings: readonly NewReading[],
  keys: readonly string[],
  isNew: ReadonlySet<string>,
  there: Map<string, KeptValue>,
  correct: boolean,
): { outcomes: Stored[]; revisions: Revised[] } {
  const revisions: Revised[] = [];
  const outcomes = readings.map((reading, i): Stored => {
    const key = keys[i] ?? '';
    const kept = there.get(key);
    if (!kept) {
      if (!isNew.has(key)) throw new Error('A reading was neither stored nor there');
      there.set(key, { value: reading.value, revision: 0 });
      return 'stored';
    }
    if (kept.value === reading.value) return 'repeat';
    if (!correct) return 'conflict';
    const revised = { value: reading.value, revision: kept.revision + 1 };
    revisions.push({ ...reading, revision: revised.revision });
    there.set(key, revised);
    return 'corrected';
  });
  return { outcomes, revisions };
}
