import 'server-only';
import { ROLES, type Role } from '#core/rota/rota';
import type { Who } from './who';

/** What can be done with a site. */
export type Verb = 'see' | 'import' | 'audit';

/** The least role that may. */
const LEAST: Record<Verb, Role> = { see: 'viewer', import: 'manager', audit: 'manager' };

/**
 * Whether somebody may do something at a site.
 *
 * @param who    who asks
 * @param verb   what they ask for
 * @param site   key of the site, which need not exist yet
 */
export function may(who: Who, verb: Verb, site: string): boolean {
  const role = Object.hasOwn(who.at, site) ? who.at[site] : who.everywhere;
  return role !== null && role !== undefined && ROLES.indexOf(role) >= ROLES.indexOf(LEAST[verb]);
}
