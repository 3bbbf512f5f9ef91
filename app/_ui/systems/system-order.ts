import type { SystemRow } from './system-row';

/** Last in the order of gravity: a system whose review is still under way. */
const LAST = 1e6;

/** Names in order, tank 2 before tank 10. */
export const byWords = new Intl.Collator('en', { numeric: true }).compare;

export function byNumber(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

/** Least time to spare first: nobody comes, then the shortest, then where nothing is harmed. */
export function spareOf({ review }: SystemRow): number {
  if (!review || review.spareS === undefined) return Number.MAX_VALUE;
  return review.spareS ?? -Number.MAX_VALUE;
}

/** Gravest first; among equals the one with the least to spare. */
export function compareGravity(a: SystemRow, b: SystemRow): number {
  return (
    byNumber(a.review?.claimed.rank ?? LAST, b.review?.claimed.rank ?? LAST) ||
    byNumber(spareOf(a), spareOf(b)) ||
    byWords(a.name, b.name)
  );
}

/** Gravest first as tested; among equals as claimed. */
export function compareTested(a: SystemRow, b: SystemRow): number {
  return byNumber(a.review?.tested.rank ?? LAST, b.review?.tested.rank ?? LAST) || compareGravity(a, b);
}
