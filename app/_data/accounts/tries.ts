import 'server-only';
import { createHash } from 'node:crypto';
import { RateLimiterPostgres, RateLimiterRes } from 'rate-limiter-flexible';
import { database } from '../client';
import { pool } from '../pool';

/** Failures in a row after which a password is no longer asked about (NIST SP 800-63B-4, 3.2.2); a new one begins anew. */
const MOST_FAILURES = 100;
/** Failures without a pause after them. Common practice, no source. */
const FREE_FAILURES = 5;
/** s of the longest pause. Common practice, no source. */
const LONGEST_PAUSE_S = 900;
/** Failures that one address may cause in an hour, over all accounts. Common practice, no source. */
const ADDRESS_FAILURES = 60;
const HOUR_S = 3600;
/** s a failure is remembered that none followed. */
const MONTH_S = 30 * 24 * HOUR_S;

/** How long to wait before another try; `never` until the password is a new one. */
export type Pause = { waitS: number } | 'never' | null;

const STORE = { tableName: 'rate_limit', tableCreated: true, storeType: 'pool', clearExpiredByTimeout: false } as const;

/** The pool is opened anew in tests, so a limiter is made for each question: it keeps nothing itself. */
function limiter(keyPrefix: string, points: number, duration: number): RateLimiterPostgres {
  return new RateLimiterPostgres({ ...STORE, storeClient: pool(), keyPrefix, points, duration });
}

/** The table holds no address of a person: what was typed as one may be anything, a password too. */
function keyOf(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64url');
}

/**
 * Counts a try before it is looked at, as if it failed, so that many at once are not let through by each other.
 *
 * @param email     address it was made for, whether there is such an account or not
 * @param address   of the machine it came from
 * @returns         null when it may be made; else how long to wait, and it does not count
 */
export async function countTry(email: string, address: string): Promise<Pause> {
  const from = await admitted(limiter('from', ADDRESS_FAILURES, HOUR_S), keyOf(address));
  if (from !== null) return from;
  const failures = limiter('failures', MOST_FAILURES, MONTH_S);
  const key = keyOf(email);
  const { consumedPoints } = await failures.penalty(key, 1, { customDuration: MONTH_S });
  if (consumedPoints > MOST_FAILURES) return await notCounted(failures, key, 'never');
  const pauseS = consumedPoints <= FREE_FAILURES ? 0 : 2 ** (consumedPoints - FREE_FAILURES - 1);
  if (pauseS === 0) return null;
  const pause = await admitted(limiter('pause', 1, HOUR_S), key, Math.min(pauseS, LONGEST_PAUSE_S));
  return pause === null ? null : await notCounted(failures, key, pause);
}

/** Forgets the failures of an account: the password was right, or is a new one. */
export async function forgetFailures(email: string, address?: string): Promise<void> {
  const key = keyOf(email);
  await limiter('failures', MOST_FAILURES, MONTH_S).delete(key);
  await limiter('pause', 1, HOUR_S).delete(key);
  if (address !== undefined) await limiter('from', ADDRESS_FAILURES, HOUR_S).reward(keyOf(address), 1);
}

/**
 * Counts something that may be done so often, such as asking for mail.
 *
 * @param what     what is done
 * @param of       for whom, or from where
 * @param points   times within the duration
 * @param duration s
 * @returns        whether it may be done once more
 */
export async function mayOnceMore(what: string, of: string, points: number, duration: number): Promise<boolean> {
  return (await admitted(limiter(what, points, duration), keyOf(of))) === null;
}

/** Removes what is counted no more. */
export async function clearTries(at: Date): Promise<void> {
  await database().rateLimit.deleteMany({ where: { expire: { lt: at.getTime() } } });
}

async function admitted(by: RateLimiterPostgres, key: string, customDuration?: number): Promise<Pause> {
  try {
    await by.consume(key, 1, customDuration === undefined ? {} : { customDuration });
    return null;
  } catch (refused) {
    if (!(refused instanceof RateLimiterRes)) throw refused;
    return { waitS: Math.max(1, Math.ceil(refused.msBeforeNext / 1000)) };
  }
}

async function notCounted(failures: RateLimiterPostgres, key: string, pause: Pause): Promise<Pause> {
  await failures.reward(key, 1);
  return pause;
}
