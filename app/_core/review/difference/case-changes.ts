import type { Column } from '../../plans/credit';
import { leastSpare } from '../order';
import type { FaultCase, HarmClass, Judgement, Verdict } from '../result';
import { gravity } from '../verdict';
import { caseTitle } from '../words';

/** How one fault case is judged in one column for one class of harm. */
export interface CaseSide {
  verdict: Verdict;
  /** Least time to spare, s; null when nobody ever comes or nothing is harmed. */
  spareS: number | null;
}

/** One fault case that is judged otherwise. */
export interface CaseChange {
  id: string;
  title: string;
  column: Column;
  /** Whom or what the harm befalls; null when it harms nothing on either side. */
  befalls: HarmClass | null;
  /** Null on the side that has no such fault case. */
  before: CaseSide | null;
  after: CaseSide | null;
  /** What becomes of it; `other` where one of the verdicts is that it is not assessed. */
  way: 'graver' | 'milder' | 'new' | 'gone' | 'other';
}

/** Least change of the time to spare that is told, s. */
const TOLD_FROM_S = 60;
/** The same as a part of the time to spare: finer than this a verdict does not ask (see `courses`). */
const TOLD_FROM_PART = 0.02;
const COLUMNS: readonly Column[] = ['claimed', 'tested'];
const CLASSES: readonly HarmClass[] = ['animals', 'floor', 'equipment'];
const WAYS: readonly CaseChange['way'][] = ['graver', 'new', 'other', 'milder', 'gone'];

/**
 * Fault cases that are judged otherwise: another verdict, or the same one with more or less time to spare.
 *
 * @returns   those that become graver first, then new ones, then what becomes milder, then what is gone; within each, the
 *            gravest first
 */
export function caseChanges(before: readonly FaultCase[], after: readonly FaultCase[]): CaseChange[] {
  const was = new Map(before.map((c) => [c.id, c]));
  const is = new Map(after.map((c) => [c.id, c]));
  const ids = [...new Set([...is.keys(), ...was.keys()])];
  return ids.flatMap((id) => changesOf(was.get(id), is.get(id))).sort(compareChanges);
}

function changesOf(was: FaultCase | undefined, is: FaultCase | undefined): CaseChange[] {
  const named = is ?? was;
  if (!named) return [];
  const told = COLUMNS.flatMap((column) =>
    classesOf(was?.[column], is?.[column]).flatMap((befalls) => {
      const [before, after] = [sideOf(was?.[column], befalls), sideOf(is?.[column], befalls)];
      if (isAlike(before, after)) return [];
      return [{ id: named.id, title: caseTitle(named), column, befalls, before, after, way: wayOf(before, after) }];
    }),
  );
  return told;
}

/** Classes of harm that a fault case leads to on either side; null alone where it leads to none. */
function classesOf(was: Judgement | undefined, is: Judgement | undefined): (HarmClass | null)[] {
  const found = new Set([was, is].flatMap((one) => one?.outcomes.map(({ harm }) => harm.class) ?? []));
  return found.size === 0 ? [null] : CLASSES.filter((one) => found.has(one));
}

function sideOf(judgement: Judgement | undefined, befalls: HarmClass | null): CaseSide | null {
  if (!judgement) return null;
  const outcome = judgement.outcomes.find(({ harm }) => harm.class === befalls);
  // It harms something else, but not this: for this it holds.
  if (!outcome) return { verdict: judgement.outcomes.length === 0 ? judgement.verdict : 'holds', spareS: null };
  const spare = leastSpare({ verdict: outcome.verdict, outcomes: [outcome], acted: [] });
  return { verdict: outcome.verdict, spareS: Number.isFinite(spare) ? spare : null };
}

function isAlike(before: CaseSide | null, after: CaseSide | null): boolean {
  if (!before || !after) return before === after;
  if (before.verdict !== after.verdict) return false;
  if (before.spareS === null || after.spareS === null) return before.spareS === after.spareS;
  const least = Math.max(TOLD_FROM_S, TOLD_FROM_PART * Math.abs(before.spareS));
  return Math.abs(after.spareS - before.spareS) < least;
}

function wayOf(before: CaseSide | null, after: CaseSide | null): CaseChange['way'] {
  if (!before) return 'new';
  if (!after) return 'gone';
  if (before.verdict === 'not-assessed' || after.verdict === 'not-assessed') return 'other';
  // Without anybody ever coming there is less to spare than any figure.
  const spare = ({ spareS }: CaseSide) => spareS ?? Number.NEGATIVE_INFINITY;
  const graver = gravity(before.verdict) - gravity(after.verdict) || spare(before) - spare(after);
  return graver > 0 ? 'graver' : 'milder';
}

function compareChanges(a: CaseChange, b: CaseChange): number {
  return (
    WAYS.indexOf(a.way) - WAYS.indexOf(b.way) ||
    gravityOf(a) - gravityOf(b) ||
    classRank(a) - classRank(b) ||
    compareTexts(a.id, b.id) ||
    COLUMNS.indexOf(a.column) - COLUMNS.indexOf(b.column)
  );
}

function gravityOf({ before, after }: CaseChange): number {
  return Math.min(...[before, after].flatMap((side) => (side ? [gravity(side.verdict)] : [])));
}

function classRank({ befalls }: CaseChange): number {
  return befalls === null ? CLASSES.length : CLASSES.indexOf(befalls);
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
