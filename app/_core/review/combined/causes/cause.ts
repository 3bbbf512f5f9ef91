import type { Equipment, StateName } from '../../../facility/system';
import type { Health } from '../../../simulate/device';
import { gravestOutcome } from '../../gravest';
import type { Judgement, Verdict } from '../../result';
import type { Part } from '../../study';
import type { Subject } from '../../trial';
import { faultPart } from '../combination';
import { failing, judgeJoint } from '../joint';
import { caseId, type Look } from '../look';

/** Things that fail together because they share something. */
export interface Common {
  state: StateName;
  parts: Part[];
  /** What they share, in words. */
  because: string;
  /** Gravest of what its parts come to by themselves. */
  alone: Verdict;
  /** What they come to together; nothing is simulated before it is asked for. */
  judge: () => Judgement;
}

/** One kind of shared thing: finds all of its kind in a system. One file each; `catalogue.ts` lists them. */
export type Cause = (look: Look) => Common[];

/** Several faults that befall at once; none unless there are two at least. */
export function together(look: Look, members: readonly (Subject | null)[], because: string): Common[] {
  const found = members.filter((one) => one !== null);
  if (found.length < 2) return [];
  return [
    {
      state: 'normal',
      parts: found.map(faultPart),
      because,
      alone: graveAlone(look, found),
      judge: () => judgeJoint(look, found),
    },
  ];
}

/** A fault case that the review has judged already, told by what fails in it; none unless there are two things at least. */
export function asJudged(
  look: Look,
  id: string,
  parts: readonly Part[],
  members: readonly Subject[],
  because: string,
): Common[] {
  const found = look.tried.find(({ case: c }) => c.id === id);
  if (!found || parts.length < 2) return [];
  return [
    {
      state: found.case.state,
      parts: [...parts],
      because,
      alone: graveAlone(look, members),
      judge: () => found.case.claimed,
    },
  ];
}

/** What each of some equipment is when it is in some health, as far as the catalogue has a failure mode for it. */
export function failures({ facility, system }: Look, equipment: readonly Equipment[], health: Health): Subject[] {
  return equipment.map(({ key }) => failing(facility, system, key, health)).filter((one) => one !== null);
}

/** Gravest of what faults come to by themselves. */
export function graveAlone(look: Look, members: readonly Subject[]): Verdict {
  const ids = new Set(members.map(caseId));
  const own = look.tried.filter(({ case: c }) => ids.has(c.id)).map(({ case: c }) => c);
  const [worst] = own.map(({ claimed }) => gravestOutcome(claimed)).sort((a, b) => a.rank - b.rank);
  return worst?.verdict ?? 'holds';
}

/** Members by what they share, where they share it. */
export function sharing<T>(members: readonly T[], by: (one: T) => string | undefined): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const one of members) {
    const key = by(one);
    if (key !== undefined) groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups].filter(([, group]) => group.length > 1);
}
