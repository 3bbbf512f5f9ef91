import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { eraseAccount, eraseNamesAt } from '#data/accounts/erase';
import { hasRoleElsewhere, listMembers, sitesOf } from '#data/accounts/members';
import { appendRecords } from '#data/records/append-records';
import { countRevision, findSiteById, type SiteEntry } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { memberPlace } from '#shape/people/member';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { askForReviews } from '../reviews/ask-for-reviews';

export const erasePersonShape = memberPlace;

const STILL_HERE: Refusal = {
  why: 'conflict',
  now: 'They still have access, here or elsewhere: only somebody who has left can be erased.',
};

/**
 * Erases the name and address of somebody who has left, wherever they stand. The record keeps what they did, under an id
 * that leads to nobody; every seal of it holds.
 */
export async function erasePerson(
  who: Who,
  { site: key, account }: z.output<typeof erasePersonShape>,
): Promise<Result<{ sites: number }, Refusal>> {
  const found = await siteFor(who, 'people', key);
  if (!found.ok) return found;
  const site = found.value;
  const member = (await listMembers(site.id)).find(({ accountId }) => accountId === account);
  if (!member) return refused({ why: 'not-found', what: 'person' });
  if (member.name === null && member.email === null) return ok({ sites: 0 });
  const hasAccess = await inTransaction(async (tx) => await hasRoleElsewhere(tx, account, site.id));
  if (member.endedAt === null || hasAccess) return refused(STILL_HERE);
  const at = now();
  const others = (await sitesOf(account)).filter((id) => id !== site.id);
  // A transaction of its own for each site: they may one day lie on different machines. The account goes last, since its
  // name tells which names are theirs, so that whatever is cut off in between can be done again.
  for (const id of others) {
    const other = await findSiteById(id);
    if (other) await inTransaction((tx) => eraseAt(tx, { who, site: other, account, at }));
  }
  await inTransaction(async (tx) => {
    await eraseAt(tx, { who, site, account, at });
    await eraseAccount(tx, account, who.id, at);
  });
  return ok({ sites: others.length + 1 });
}

/** The names somebody has at one site, and what its record says of it. */
async function eraseAt(
  tx: Transaction,
  { who, site, account, at }: { who: Who; site: SiteEntry; account: string; at: Date },
): Promise<void> {
  const wasNamed = await eraseNamesAt(tx, site.id, account);
  await appendRecords(tx, site.id, [{ kind: 'person-erased', body: { by: who.id, account } }], at);
  if (!wasNamed) return;
  // The description of the site says something else now, and so may stored reviews, which told the name.
  await countRevision(tx, site.id);
  await askForReviews(tx, site, at);
}
