import type { Instant } from '../time/zone';
import type { Entry, EntryKind } from './incident';
import { byRecorded, type Standing, standing } from './story';

/** How far an incident is. */
export const INCIDENT_STATES = ['open', 'under-investigation', 'signed'] as const;
export type IncidentState = (typeof INCIDENT_STATES)[number];

/** Kinds of entry that an investigation is made of. */
const INVESTIGATING: ReadonlySet<EntryKind> = new Set(['safeguard', 'cause', 'action', 'summary', 'signature']);

/** Who signed, and what came after. */
export interface Signing {
  state: IncidentState;
  /** When the last signature that was needed was given. */
  signedMs: Instant | null;
  /** Signatures that count: both cover the same entries, by two accounts; or that of a sole keeper. */
  counted: Standing<'signature'>[];
  /** Ids of the entries that were written after it was signed. */
  afterwards: ReadonlySet<string>;
}

/**
 * Whether an incident is signed. Two signatures count together when they cover the very same entries and were given by two
 * accounts, one as a lead and one as a manager; a sole keeper's counts alone. What is written later is an addition.
 */
export function signingOf(entries: readonly Entry[]): Signing {
  const given = standing(entries, 'signature').sort(byRecorded);
  const counted = firstThatCount(given);
  const last = counted.at(-1);
  if (!last) {
    const begun = entries.some(({ kind }) => INVESTIGATING.has(kind));
    return { state: begun ? 'under-investigation' : 'open', signedMs: null, counted: [], afterwards: new Set() };
  }
  const covered = new Set(last.body.covers);
  const later = entries.filter(({ id, kind }) => kind !== 'signature' && !covered.has(id));
  return { state: 'signed', signedMs: last.recordedMs, counted, afterwards: new Set(later.map(({ id }) => id)) };
}

function firstThatCount(given: readonly Standing<'signature'>[]): Standing<'signature'>[] {
  for (const [i, one] of given.entries()) {
    if (one.body.as === 'sole-keeper') return [one];
    const other = given
      .slice(0, i)
      .find(({ by, body }) => by !== one.by && body.as !== one.body.as && body.sha256 === one.body.sha256);
    if (other) return [other, one];
  }
  return [];
}
