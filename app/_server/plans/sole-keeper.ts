import 'server-only';
import { ROLES } from '#core/rota/rota';
import { countOthers } from '#data/plans/approvers';
import type { Transaction } from '#data/transaction';
import { LEAST } from '../gate/may';
import type { Who } from '../gate/who';

/** Roles that may put a plan into force. */
const APPROVERS = ROLES.slice(ROLES.indexOf(LEAST['approve-plan']));

/** Whether nobody but this person may put a plan of the site into force. */
export async function isSoleKeeper(
  tx: Pick<Transaction, '$queryRaw'> | undefined,
  siteId: string,
  who: Who,
): Promise<boolean> {
  return (await countOthers(tx, siteId, who.id, APPROVERS)) === 0;
}
