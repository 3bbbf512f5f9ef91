import 'server-only';
import { ROLES, type Role } from '#core/rota/rota';
import { findAccount } from '#data/accounts/accounts';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { isAdministrator } from '../machine/is-administrator';

/** Why somebody with a role at every site is not given less at one by those of the site alone. */
export const ABOVE_SITE: Refusal = {
  why: 'conflict',
  now: 'They have a role at every site, and only an administrator of every site gives them less at one.',
};

/**
 * Whether a role would take from somebody what they may do at every site: an administrator of one site could so be alone
 * with it, and see to its plans and its record without them.
 *
 * @param account   whose role it would be
 */
export async function isAboveSite(who: Who, account: string, role: Role): Promise<boolean> {
  const everywhere = (await findAccount(account))?.everywhere ?? null;
  return everywhere !== null && ROLES.indexOf(role) < ROLES.indexOf(everywhere) && !isAdministrator(who);
}
