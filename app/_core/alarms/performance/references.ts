/**
 * Reference lines for the alarms that one person has to answer, over at least thirty days. Source: ISA-18.2-2016, clause 16, and
 * IEC 62682, as two published summaries of them tell; the standards themselves were not read. They are lines to look along, and
 * no grades.
 */
export const REFERENCES = {
  /** Alarms an hour: very likely acceptable, and the most that can be managed. */
  perHour: { acceptable: 6, manageable: 12 },
  perTenMin: { acceptable: 1, manageable: 2 },
  /** Most in any ten minutes. */
  mostInTenMin: 10,
  /** Share of the ten-minute stretches with more than ten, and of the time spent in floods: less than about 1 %. */
  shareOver: 0.01,
  /** A flood begins with more than this in ten minutes, and ends with less than that. */
  flood: { over: 10, under: 5 },
  /** Share of all alarms that the ten most frequent make up: 1 to 5 % at most. */
  topTenShare: 0.05,
  /** Alarms that are active for longer than a day: fewer than this on any day. */
  stale: 5,
  /** Of low, medium and high priority: about 80, 15 and 5 %. */
  spread: { low: 0.8, medium: 0.15, high: 0.05 },
} as const;
