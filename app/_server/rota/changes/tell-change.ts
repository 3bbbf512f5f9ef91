import 'server-only';
import type { Member } from '#core/alarms/to-tell';
import type { ChangeEvent } from '#core/rota/change';
import { ROLES } from '#core/rota/rota';
import { findTellable } from '#data/alarms/calls';
import { findChange, type KeptChange } from '#data/rota/changes';
import type { Transaction } from '#data/transaction';
import { wake } from '#data/wake';
import { LEAST } from '../../gate/may';

/** Roles that may approve a change of duties. */
const APPROVERS = ROLES.slice(ROLES.indexOf(LEAST['approve-duty']));

/** A change of duties that somebody has just done something with. */
interface Done {
  siteId: string;
  change: string;
  /** Account that did it, or `local`: they are told nothing. */
  by: string;
}

/** Has those mailed who have to answer what was asked for: who is to take the turn, else whoever may approve. */
export async function tellAsked(tx: Transaction, done: Done): Promise<void> {
  const { change, members } = await around(tx, done);
  if (!change) return;
  const taker = members.find(({ person }) => person !== null && person === change.takes?.key);
  const told = taker && taker.account !== done.by ? [taker] : approversOf(change, members);
  await mail(tx, done, told, 'waits');
}

/** Has those mailed whom it concerns what came of a change; once a swap is agreed, also whoever may approve it. */
export async function tellCame(tx: Transaction, done: Done, comes: ChangeEvent): Promise<void> {
  const { change, members } = await around(tx, done);
  if (!change) return;
  const concerned = members.filter(
    ({ account, person }) =>
      account === change.askedBy || (person !== null && [change.person.key, change.takes?.key].includes(person)),
  );
  await mail(tx, done, concerned, comes);
  if (comes !== 'agreed') return;
  const approvers = approversOf(change, members).filter((one) => !concerned.includes(one));
  await mail(tx, done, approvers, 'waits');
}

async function around(
  tx: Transaction,
  { siteId, change }: Done,
): Promise<{ change: KeptChange | null; members: Member[] }> {
  return { change: await findChange(tx, siteId, change), members: await findTellable(tx, siteId) };
}

/** Whoever may approve it: no one whose own duties it is while there is somebody else, and no one from elsewhere either. */
function approversOf({ person, takes }: KeptChange, members: readonly Member[]): Member[] {
  const all = members.filter(({ role }) => APPROVERS.includes(role));
  const free = all.filter((one) => one.person === null || ![person.key, takes?.key].includes(one.person));
  const here = free.filter(({ isElsewhere }) => isElsewhere !== true);
  return [here, free, all].find((some) => some.length > 0) ?? [];
}

async function mail(
  tx: Transaction,
  { siteId, change, by }: Done,
  told: readonly Member[],
  news: ChangeEvent | 'waits',
): Promise<void> {
  for (const { account } of told)
    if (account !== by) await wake(tx, 'duty-mail', { site: siteId, change, account, news }, { maxAttempts: 10 });
}
