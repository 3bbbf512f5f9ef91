import 'server-only';
import type { ChangeEvent } from '#core/rota/change';
import type { KeptChange } from '#data/rota/changes';
import type { Refusal } from '../../gate/refusal';

/** Somebody who would say what comes of a change. */
export interface Answerer {
  id: string;
  /** Key of the person of the rota that they are; null when they are nobody there. */
  self: string | null;
  isApprover: boolean;
  /** Whether somebody else may approve as well. */
  hasOthers: boolean;
}

/**
 * Whoever takes a turn agrees or declines, or a lead for them; who asked, or gives, withdraws; a lead decides, but does not
 * approve a change of their own duties while somebody else could.
 *
 * @returns   why they may not; null when they may
 */
export function whyNot(
  { id, self, isApprover, hasOthers }: Answerer,
  { person, takes, askedBy }: KeptChange,
  comes: ChangeEvent,
): Refusal | null {
  const is = (one: { key: string | null } | null) => self !== null && one?.key === self;
  if (comes === 'agreed' || comes === 'declined') return isApprover || is(takes) ? null : { why: 'not-allowed' };
  if (comes === 'withdrawn') return isApprover || is(person) || askedBy === id ? null : { why: 'not-allowed' };
  if (!isApprover) return { why: 'not-allowed' };
  return comes === 'approved' && hasOthers && (is(person) || is(takes)) ? { why: 'own-work' } : null;
}
