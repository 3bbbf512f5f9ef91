import type { SystemReview } from './result';

/** Figures of findings that name a person. */
const NAMES_SOMEBODY = new Set(['by']);

/**
 * A review as it may be kept for good: without the names of persons, which must be able to be erased. Who took a safeguard
 * out of service stands in the record, by id.
 */
export function keepable(review: SystemReview): SystemReview {
  return {
    ...review,
    findings: review.findings.map((finding) => ({
      ...finding,
      lines: finding.lines.map((line) => ({
        ...line,
        figures: line.figures.filter(({ name }) => !NAMES_SOMEBODY.has(name)),
      })),
    })),
  };
}
