import 'server-only';
import { nextAttempt } from '#core/alarms/told';
import { accountNames } from '#data/accounts/names';
import { addAttempt, type CallToMake, findCall, findCallsWaiting } from '#data/alarms/calls';
import { callsOf } from '#data/alarms/life';
import { findOccurrence } from '#data/alarms/told';
import { database } from '#data/client';
import { news } from '#data/news';
import { inTransaction } from '#data/transaction';
import { now } from '../clock';
import { isMailConfigured, sendMail } from '../mail/send-mail';
import { callText } from './call-text';
import { wakeCall } from './wake-call';

/** Characters that are kept of what a mail server said. */
const SAID = 200;
/** ms after which an attempt that should have been made is asked for again: the worker that had it is gone. */
const LOST_MS = 8000;
/** ms by which the clock of the database, which says when a job is due, may be ahead of ours. */
const EARLY_MS = 2000;

/** How an attempt went. */
type Outcome = Parameters<typeof addAttempt>[2];

/** Calls this process is at: a mail server may be slower than the search for lost calls. */
const underWay = new Set<string>();

/**
 * Tells somebody of an alarm, once, and notes how that went. What fails is tried again later for as long as nobody has
 * acknowledged it; whoever was told before the note of it was kept is told twice, and nobody is left out.
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
  const call = await findCall(site, id);
  if (!call || call.acknowledged) return;
  const dueMs = nextAttempt(call.madeAt.getTime(), call.attempts);
  if (dueMs === null || dueMs > now().getTime() + EARLY_MS) return;
  const outcome = await attempt(call);
  const againMs = nextAttempt(call.madeAt.getTime(), [...call.attempts, { ...outcome, atMs: outcome.at.getTime() }]);
  await inTransaction(async (tx) => {
    await addAttempt(tx, call, outcome);
    if (againMs !== null) await wakeCall(tx, call, new Date(againMs));
    await news(tx, call.siteId, 'alarms');
  });
}

async function attempt(call: CallToMake): Promise<Outcome> {
  if (call.email === null) return { at: now(), result: 'no-way', detail: 'no address' };
  if (!isMailConfigured()) return { at: now(), result: 'no-way', detail: 'no mail is sent from here' };
  const told = await findOccurrence(call.siteId, call.occurrenceId);
  if (!told) throw new Error(`Call ${call.id} is of no alarm`);
  const others = (await callsOf(call.siteId, [call.occurrenceId])).map(({ accountId }) => accountId);
  const names = await accountNames(others.filter((account) => account !== call.accountId));
  try {
    await sendMail({ to: call.email, ...callText(told, call.why, [...names.values()]) });
    return { at: now(), result: 'taken' };
  } catch (error) {
    const detail = error instanceof Error ? error.message.slice(0, SAID) : 'the mail server said nothing';
    return { at: now(), result: 'failed', detail };
  }
}

/**
 * Asks again for calls whose attempt is overdue: what was to make it is gone, or never was asked. A job that a worker holds
 * loses its key to the new one, so that nobody waits until that worker counts as gone; one that still waits is the same one.
 *
 * @param at   the present
 */
export async function wakeLostCalls(at: Date): Promise<void> {
  for (const { siteId, id, madeAt, attempts } of await findCallsWaiting()) {
    const dueMs = nextAttempt(madeAt.getTime(), attempts);
    if (dueMs !== null && dueMs < at.getTime() - LOST_MS) await wakeCall(database(), { siteId, id });
  }
}
