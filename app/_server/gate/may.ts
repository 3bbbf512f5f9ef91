import 'server-only';
import { ROLES, type Role } from '#core/rota/rota';
import type { Who } from './who';

/**
 * The one table of who may do what: what can be done at a site, and the least role that may. Each role may what those
 * before it may: viewer, aquarist, lead, manager, admin.
 */
export const LEAST = {
  /** Read what a site is and what its review says. */
  see: 'viewer',
  /** Read what was done at a site, when and by whom. */
  'read-record': 'aquarist',
  /** Record that a safeguard was tested. */
  'test-safeguard': 'aquarist',
  /** Say that an alarm was seen, and add to what is known of it. */
  acknowledge: 'aquarist',
  /** Call for help: raise an alarm by hand. */
  'call-for-help': 'aquarist',
  /** Shelve an alarm for a while, and end that. */
  'shelve-alarm': 'aquarist',
  /** Walk a round: record what was looked at, and sign. */
  walk: 'aquarist',
  /** Put a system into an operating state, and end it. */
  'set-state': 'aquarist',
  /** Hand a site over, take it, and say which animals are watched. */
  'hand-over': 'aquarist',
  /** Open an incident and write in its log. */
  'log-incident': 'aquarist',
  /** Ask for leave or for a swap of one's own, and agree to take a turn. */
  'change-duty': 'aquarist',
  /** Approve leave and swaps, ask for those of others, and take them back. */
  'approve-duty': 'lead',
  /** Look at a round that somebody else signed. */
  'second-look': 'lead',
  /** Let a treatment go on for another day. */
  'authorise-state': 'lead',
  /** Take in the file of a logger. */
  'take-in-file': 'lead',
  /** Lead the investigation of an incident: marks, losses, safeguards, actions, signing. */
  investigate: 'lead',
  /** Take a safeguard out of service, and put it back. */
  'switch-safeguard': 'lead',
  /** Take an alarm out of service, and shelve one that is never suppressed. */
  'alarm-out-of-service': 'lead',
  /** Change how a site is described. */
  describe: 'lead',
  /** Write a plan and submit it. */
  'write-plan': 'lead',
  /** Put a plan into force that somebody else wrote. */
  'approve-plan': 'lead',
  /** Make a whole site be as a file says. */
  import: 'manager',
  /** Let a source send readings, and stop it. */
  'reading-sources': 'manager',
  /** Say where calls are posted besides, for a service that rings people. */
  'call-webhook': 'manager',
  /** Work out every seal of the record again. */
  audit: 'manager',
  /** Say who may do what at the site, and let people in and out. */
  people: 'admin',
} as const satisfies Record<string, Role>;

/** What can be done at a site. */
export type Verb = keyof typeof LEAST;

/**
 * Whether somebody may do something at a site.
 *
 * @param who    who asks
 * @param verb   what they ask for
 * @param site   key of the site, which need not exist yet
 */
export function may(who: Who, verb: Verb, site: string): boolean {
  return isAtLeast(who, LEAST[verb], site);
}

/** Whether somebody has a role at a site, or one above it. */
export function isAtLeast(who: Who, least: Role, site: string): boolean {
  const role = Object.hasOwn(who.at, site) ? who.at[site] : who.everywhere;
  return role !== null && role !== undefined && ROLES.indexOf(role) >= ROLES.indexOf(least);
}

/** Whether somebody may begin a site that is not there yet, which is nobody's: whoever may import one everywhere. */
export function mayBeginSite(who: Who): boolean {
  return may({ ...who, at: {} }, 'import', '');
}
