import 'server-only';
import { isDue, nextAttempt } from '#core/alarms/told';
import { addAttempt, type CallToMake, findCall, findCallsWaiting } from '#data/alarms/calls';
import { database } from '#data/client';
import { news } from '#data/news';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import { SEND } from '../calls/send';
import { testsSince } from '../calls/test-time';
import { messageOf } from './message-of';
import { wakeCall } from './wake-call';

/** ms after which an attempt that should have been made is asked for again: the worker that had it is gone. */
const LOST_MS = 8000;
/** ms by which the clock of the database, which says when a job is due, may be ahead of ours. */
const EARLY_MS = 2000;

/** How an attempt went. */
type Outcome = Parameters<typeof addAttempt>[2];

/** Calls this process is at: a service may be slower than the search for lost calls. */
const underWay = new Set<string>();

/**
 * Tells somebody of an alarm or of a test, by one way and once, and notes how that went. What fails is tried again later for as long as nobody has
 * acknowledged it, or the test runs; whoever was told before the note of it was kept is told twice, and nobody is left out.
 */
export async function makeCall({ site, call: id }: { site: string; call: string }): Promise<void> {
  if (underWay.has(id)) return;
  underWay.add(id);
  try {
    await makeDue(site, id);
  } finally {
    underWay.delete(id);
  }
}

async function makeDue(site: string, id: string): Promise<void> {
  const call = await findCall(site, id, testsSince(now()));
  if (!call || call.isOver) return;
  if (!isDue(call.madeAt.getTime(), call.attempts, now().getTime() + EARLY_MS)) return;
  const outcome = await attempt(call);
  const againMs = nextAttempt(call.madeAt.getTime(), [...call.attempts, { ...outcome, atMs: outcome.at.getTime() }]);
  await inTransaction(async (tx) => {
    await addAttempt(tx, call, outcome);
    if (againMs !== null) await wakeCall(tx, call, new Date(againMs));
    await news(tx, call.siteId, 'alarms');
  });
}

async function attempt(call: CallToMake): Promise<Outcome> {
  const sent = await SEND[call.channel](call, await messageOf(call));
  return { at: now(), ...sent };
}

/**
 * Asks again for calls whose attempt is overdue: what was to make it is gone, or never was asked. A job that a worker holds
 * loses its key to the new one, so that nobody waits until that worker counts as gone; one that still waits is the same one.
 *
 * @param at   the present
 */
export async function wakeLostCalls(at: Date): Promise<void> {
  for (const { siteId, id, madeAt, attempts } of await findCallsWaiting(testsSince(at))) {
    if (isDue(madeAt.getTime(), attempts, at.getTime() - LOST_MS)) await wakeCall(database(), { siteId, id });
  }
}
