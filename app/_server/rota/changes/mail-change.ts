import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type ChangeEvent, changeState, mayCome } from '#core/rota/change';
import { findAccount } from '#data/accounts/accounts';
import { loadFacility } from '#data/facility/load-facility';
import { findChange, type KeptChange } from '#data/rota/changes';
import { findSiteById, type SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { wholeAddress } from '../../calls/address';
import { timeIn } from '../../local-day';
import { logInfo } from '../../log';
import { isMailConfigured, type Mail, sendMail } from '../../mail/send-mail';

const MINUTES = 16;

/** What of a change is mailed to whom. `waits`: it waits for their answer. */
export interface ChangeMail {
  site: string;
  change: string;
  account: string;
  news: ChangeEvent | 'waits';
}

const CAME: Readonly<Record<ChangeEvent, string>> = {
  agreed: 'agreed; a lead has still to approve it',
  declined: 'declined: nothing changes',
  approved: 'approved: the rota is changed',
  refused: 'refused: nothing changes',
  withdrawn: 'withdrawn: nothing changes',
  'taken-back': 'taken back: the rota is as it was before',
};

/**
 * Mails somebody that leave or a swap waits for their answer, or what came of it. Why somebody is away stays on the page. What
 * waits no longer when the mail would go is not mailed.
 *
 * @throws when the mail server does not take it
 */
export async function mailChange({ site: siteId, change: id, account, news }: ChangeMail): Promise<void> {
  const [found, site] = await Promise.all([findAccount(account), findSiteById(siteId)]);
  const change = site && (await inTransaction((tx) => findChange(tx, siteId, id)));
  if (!found?.email || found.endedAt !== null || !site || !change) return;
  if (news === 'waits' && !isWaiting(change)) return;
  if (!isMailConfigured()) return logInfo('leave or a swap was not mailed: no mail is sent from here', { account });
  const facility = (await loadFacility(siteId))?.facility;
  await sendMail({
    to: found.email,
    id: `${id}-${news}-${account}`,
    ...message(site, change, news, facility?.people ?? []),
  });
}

function isWaiting({ kind, events }: KeptChange): boolean {
  return mayCome(kind, changeState(events.map((event) => event.kind))).includes('withdrawn');
}

function message(
  site: SiteEntry,
  change: KeptChange,
  news: ChangeMail['news'],
  people: Facility['people'],
): Pick<Mail, 'subject' | 'text'> {
  const what = said(change, site.zone, people);
  const came = news === 'waits' ? 'It waits for your answer.' : `It was ${CAME[news]}.`;
  const subject = `${site.name}: ${change.kind} ${news === 'waits' ? 'waits for an answer' : news.replace('-', ' ')}`;
  const url = wholeAddress(`/sites/${encodeURIComponent(site.key)}/rota/changes`);
  return { subject, text: `${what}\n\n${came}\n\n${url}\n\nOpening the page answers nothing.\n` };
}

function said(
  { kind, person, takes, from, to, turn, back }: KeptChange,
  zone: string,
  people: Facility['people'],
): string {
  const nameOf = (one: { key: string | null } | null) =>
    people.find(({ key }) => key === one?.key)?.name ?? 'somebody who left';
  const at = (when: Date) => timeIn(zone, when).slice(0, MINUTES);
  const span = from && to ? `from ${at(from)} to ${at(to)} (${zone})` : '';
  if (kind === 'leave') return `Leave of ${nameOf(person)} ${span}.`;
  const given = `${nameOf(takes)} is to take ${span === '' ? 'the turn' : 'a part of the turn'} of ${nameOf(person)} that begins on ${turn?.date ?? '?'}`;
  const part = span === '' ? '' : `, ${span}`;
  return `${given}${part}${back ? `, for one of theirs that begins on ${back.date}` : ''}.`;
}
