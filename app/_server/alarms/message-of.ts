import 'server-only';
import { accountNames } from '#data/accounts/names';
import type { CallToMake } from '#data/alarms/calls';
import { callsOf } from '#data/alarms/life';
import { findOccurrence, type OccurrenceTold } from '#data/alarms/told';
import { findSiteById } from '#data/sites';
import { callOutMessage } from '../call-outs/call-out-message';
import type { Message } from '../calls/message';
import { testMessage } from '../calls/test-message';
import { callText } from './call-text';

/**
 * What somebody is told by a call.
 *
 * @throws   when what it is about is not there, which the database does not admit
 */
export async function messageOf(call: CallToMake): Promise<Message> {
  const { id, siteId, occurrenceId, testId, callOutId, accountId, why } = call;
  const to = (await accountNames([accountId])).get(accountId) ?? accountId;
  if (callOutId !== null) return await callOutMessage({ siteId, callOutId, to, step: call.step });
  if (occurrenceId === null || why === 'test') {
    const site = await findSiteById(siteId);
    if (!site || testId === null) throw new Error(`Call ${id} is of no test`);
    return testMessage({ to, site, testId, channel: call.channel });
  }
  const told = await findOccurrence(siteId, occurrenceId);
  if (!told) throw new Error(`Call ${id} is of no alarm`);
  const others = (await callsOf(siteId, [occurrenceId])).map((one) => one.accountId);
  const names = await accountNames(others.filter((account) => account !== accountId));
  return callText(told, { to, why, step: call.step, others: [...names.values()], caller: await callerOf(told) });
}

/** Name of whoever called for help; null where readings raised it. */
async function callerOf({ definition: { on } }: OccurrenceTold): Promise<string | null> {
  return on.kind === 'by-hand' ? ((await accountNames([on.by])).get(on.by) ?? on.by) : null;
}
