import type { FaultCase, SystemReview } from './result';
import { toldCase } from './told-case';

/**
 * The fault cases that lead findings, most urgent first, each led by the harm that its finding speaks of.
 *
 * @param most   at most so many
 */
export function leadingCases({ findings, cases }: SystemReview, most: number): FaultCase[] {
  const ids = findings.flatMap(({ lines: [line] }) => (line && 'case' in line.from ? [line.from.case] : []));
  return [...new Set(ids)].slice(0, most).flatMap((id) => cases.filter((c) => c.id === id).map(toldCase));
}
