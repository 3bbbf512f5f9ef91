import type { Signer } from './round-sheet';
import { checksOf, type Sheet } from './sheet';

/** What the signatures of a round have to be. */
export interface ByTwo {
  /** What somebody else signs as well, where its sheet asks that of some lines alone; all of it when there are none. */
  lines: string[];
  /** The least role that one of the two has; null when any that may walk it will do. */
  by: Signer | null;
}

/**
 * What is asked of the second signature of a round: its sheet asks for one, or a line of it does. Whoever walked it signs first,
 * and somebody else on their own account second; of the two one has the role that the sheet names.
 *
 * @returns   null when one signature is all
 */
export function byTwo(sheet: Sheet): ByTwo | null {
  const lines = checksOf(sheet).filter(({ secondSignature }) => secondSignature === true);
  const isWhole = sheet.signing?.second === true;
  if (!isWhole && lines.length === 0) return null;
  return { lines: isWhole ? [] : lines.map(({ what }) => what), by: sheet.signing?.by ?? null };
}
