import { type ListedSystem, type SystemRow, summaryIn } from './system-row';

/** What the gravest first goes by. */
interface Gravity {
  name: string;
  /** Lower is graver. */
  rank: number;
  /** Less is graver, s. */
  spare: number;
}

/** Last in the order of gravity: a system whose review is still under way. */
const LAST = 1e6;

/** Names in order, tank 2 before tank 10. */
export const byWords = new Intl.Collator('en', { numeric: true }).compare;

export function byNumber(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

/** Least time to spare first: nobody comes, then the shortest, then where nothing is harmed. */
export function spareOf({ review }: SystemRow): number {
  return orderOfSpare(review?.spareS);
}

/** Gravest first; among equals the one with the least to spare. */
export function compareGravity(a: SystemRow, b: SystemRow): number {
  return compare(ofRow(a), ofRow(b));
}

/** Gravest first as tested; among equals as claimed. */
export function compareTested(a: SystemRow, b: SystemRow): number {
  return byNumber(a.review?.tested.rank ?? LAST, b.review?.tested.rank ?? LAST) || compareGravity(a, b);
}

/** Systems in the order of `compareGravity`, before any is put into words. */
export function gravestFirst(systems: readonly ListedSystem[]): ListedSystem[] {
  const placed = systems.map((system) => ({ system, ...ofSystem(system) }));
  return placed.sort(compare).map(({ system }) => system);
}

function compare(a: Gravity, b: Gravity): number {
  return byNumber(a.rank, b.rank) || byNumber(a.spare, b.spare) || byWords(a.name, b.name);
}

function ofRow(row: SystemRow): Gravity {
  return { name: row.name, rank: row.review?.claimed.rank ?? LAST, spare: spareOf(row) };
}

function ofSystem({ name, review }: ListedSystem): Gravity {
  const claimed = summaryIn(review)?.worst.claimed;
  return { name, rank: claimed?.rank ?? LAST, spare: orderOfSpare(claimed?.harm ? claimed.spareS : undefined) };
}

function orderOfSpare(spareS: number | null | undefined): number {
  return spareS === undefined ? Number.MAX_VALUE : (spareS ?? -Number.MAX_VALUE);
}
