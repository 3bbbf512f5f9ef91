import 'server-only';
import { reminderAt } from '#core/call-outs/call-out';
import { waysTo } from '#data/alarms/calls';
import { addCallOutEvent, type CallOutRow, eventsOf, findCallOut } from '#data/call-outs/call-outs';
import { findAccount } from '#data/accounts/accounts';
import { newId } from '#data/new-id';
import { findSiteById } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';
import type { Channel } from '#core/alarms/channels';
import { wholeAddress } from '../calls/address';
import type { Message } from '../calls/message';
import { SEND } from '../calls/send';
import { now } from '../clock';
import { logInfo } from '../log';
import { momentSaid } from '../moment-said';
import { standingOf } from './standing';

/** One reminder by one way. */
export interface Reminder {
  site: string;
  callOut: string;
  channel: Channel;
  /** Tells a repeat from something new on that way. */
  id: string;
  /** The end it is of, ms since 1970: once more time was taken it is of no use. */
  untilMs: number;
}

/** Has whoever went in alone reminded some minutes before their time is over, once for each time they took. */
export async function remindInTime(callOut: CallOutRow, at: Date): Promise<void> {
  const { siteId, id, accountId, untilAt } = callOut;
  const { again, untilMs, state } = standingOf(callOut, at);
  const dueMs = reminderAt(untilAt.getTime(), eventsOf(callOut));
  if (state !== 'out' || dueMs === null || dueMs > at.getTime()) return;
  await inTransaction(async (tx) => {
    if (!(await addCallOutEvent(tx, callOut, { kind: 'reminded', again, step: 0, at }))) return;
    for (const channel of (await waysTo(tx, siteId, [{ accountId }])).get(accountId) ?? []) {
      const reminder: Reminder = { site: siteId, callOut: id, channel, id: newId(), untilMs };
      await wake(tx, 'call-out-reminder', reminder, { maxAttempts: 3 });
    }
  });
}

/**
 * Reminds somebody by one way, while their time is not over and they are not back. It ends nothing and puts nothing off.
 *
 * @throws when that way failed, so that it is tried again
 */
export async function sendReminder({ site, callOut: id, channel, id: call, untilMs }: Reminder): Promise<void> {
  const [entry, callOut] = await Promise.all([findSiteById(site), findCallOut(site, id)]);
  const at = now();
  if (!(entry && callOut)) return;
  const standing = standingOf(callOut, at);
  if (standing.state !== 'out' || standing.untilMs !== untilMs) return;
  const account = await findAccount(callOut.accountId);
  if (!account || account.endedAt !== null) return;
  const to = { id: call, siteId: site, accountId: account.id, email: account.email, madeAt: at };
  const sent = await SEND[channel](to, message(account.name ?? '', entry, callOut, untilMs));
  if (sent.result === 'failed') throw new Error(`The reminder was not taken: ${sent.detail ?? channel}`);
  if (sent.result === 'no-way') logInfo('somebody in alone has no such way to be reminded', { callOut: id, channel });
}

function message(
  to: string,
  { key, name, zone }: { key: string; name: string; zone: string },
  { id, place }: CallOutRow,
  untilMs: number,
): Message {
  const until = momentSaid(zone, new Date(untilMs), now());
  const url = wholeAddress(`/sites/${encodeURIComponent(key)}/call-outs`);
  const short = `You went in alone at ${name}, ${place}. Your time is over at ${until}: say that you are back, or take more time.`;
  const text = [
    short,
    '',
    'Otherwise others are called to look for you:',
    url,
    '',
    'Opening the page says neither.',
    '',
  ];
  const data = { call: 'call-out-reminder', callOut: id, to: { name: to }, site: { key, name }, place };
  const subject = `Back by ${until}? ${name}`;
  return { subject, text: text.join('\n'), short, url, about: id, data, type: 'call-out.reminder' };
}
