import 'server-only';
import { ROLES } from '#core/rota/rota';
import { countOthers } from '#data/plans/approvers';
import type { Transaction } from '#data/transaction';
import { LEAST, may } from '../../gate/may';
import type { Who } from '../../gate/who';
import { ownPerson } from './own-person';
import type { Answerer } from './who-may-answer';

/** Roles that may approve a change of duties. */
const APPROVERS = ROLES.slice(ROLES.indexOf(LEAST['approve-duty']));

/** What somebody may say of the changes of a site. @param tx   the transaction to ask in; the client itself when left out */
export async function answererOf(
  who: Who,
  { id: siteId, key }: { id: string; key: string },
  tx?: Pick<Transaction, '$queryRaw'>,
): Promise<Answerer> {
  return {
    id: who.id,
    self: await ownPerson(who, siteId),
    isApprover: may(who, 'approve-duty', key),
    hasOthers: (await countOthers(tx, siteId, who.id, APPROVERS)) > 0,
  };
}
