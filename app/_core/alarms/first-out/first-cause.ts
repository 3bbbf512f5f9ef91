/** Which alarm started a cascade, and which of those it explains call by themselves all the same. */
import type { Facility } from '../../facility/facility';
import type { Priority } from '../design/priority';
import { circuitOf, equipmentOf, explains, type Placed } from './explains';

/** A time that an alarm was raised and that is still active, as a possible first cause. */
export interface Candidate {
  id: string;
  placed: Placed;
  /** ms since 1970. */
  raisedMs: number;
  beganMs: number;
  /** The one it is folded under itself. */
  causeId: string | null;
}

/**
 * The first cause of each alarm that is raised in a turn: of those that explain it, the one that was raised first, or what
 * that one is folded under. Two of the same turn that explain one another go by when they began; so the mark depends on no
 * order in which they are looked at, and once kept it never moves.
 *
 * @param raised     what is raised in this turn
 * @param standing   what is active already and suppressed by nothing
 * @returns          ids of the first causes, by the ids of what they explain
 */
export function firstCauses(
  facility: Facility,
  raised: readonly Candidate[],
  standing: readonly Candidate[],
): Map<string, string> {
  const found = new Map<string, string>();
  for (const one of raised) {
    const cause = causeOf(one, new Set());
    if (cause !== null) found.set(one.id, cause);
  }
  return found;

  function causeOf(effect: Candidate, passed: Set<string>): string | null {
    passed.add(effect.id);
    const [first] = [...standing, ...raised.filter((one) => isFirst(one, effect))]
      .filter(({ id, placed }) => !passed.has(id) && explains(facility, placed, effect.placed))
      .sort(inOrder);
    if (!first) return null;
    return first.causeId ?? (raised.includes(first) ? causeOf(first, passed) : null) ?? first.id;
  }

  function isFirst(cause: Candidate, effect: Candidate): boolean {
    return inOrder(cause, effect) < 0 || !explains(facility, effect.placed, cause.placed);
  }
}

function inOrder(a: Candidate, b: Candidate): number {
  return a.raisedMs - b.raisedMs || a.beganMs - b.beganMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

const RANK: Readonly<Record<Priority, number>> = { high: 3, medium: 2, low: 1 };

/**
 * Whether an alarm that is folded under its first cause leaves the calling to it. Only when that cannot lose anything: the
 * cause calls somebody, the same people answer both, and it is not known to be the less grave of the two.
 */
export function leavesCalling({ alarm: cause }: Placed, { alarm: effect }: Placed): boolean {
  if (cause.answeredBy === 'nobody') return false;
  if (JSON.stringify(cause.answeredBy) !== JSON.stringify(effect.answeredBy)) return false;
  const [of, own] = [cause.priority?.level, effect.priority?.level];
  if (of === 'high') return true;
  if (own === undefined || of === undefined) return own === of;
  return RANK[own] <= RANK[of];
}

/**
 * Whether an alarm says that the backup in charge fails of what another one, which somebody acknowledged, is about: a second
 * piece of equipment of the same type in the same tank, or, where a circuit of the mains lost power, what a battery or a
 * generator feeds.
 *
 * @param acknowledged   the alarm that somebody is at
 * @param raised         the one that is raised now
 */
export function isBackupFailing(facility: Facility, acknowledged: Placed, raised: Placed): boolean {
  const [one, other] = [equipmentOf(acknowledged), equipmentOf(raised)];
  if (one && other && acknowledged.system.key === raised.system.key && one.key !== other.key)
    if (one.type === other.type && (one.tank === other.tank || one.type === 'return-pump')) return true;
  const [lost, fed] = [circuitOf(facility, acknowledged), circuitOf(facility, raised)];
  return lost !== undefined && fed !== undefined && lost.backedBy.length === 0 && fed.backedBy.length > 0;
}
