/** How many of how many channels must ask for it until a safeguard acts. */
export type Vote = '1oo1' | '1oo2' | '2oo2' | '2oo3';

/** Below this the closed forms lose digits by cancellation, and a series is as exact. */
const SMALL = 1e-3;

/** Days of a year. */
const YEAR_DAYS = 365.25;

/**
 * Average probability that a safeguard which fails unseen is found failed when it is needed, over one interval between tests.
 *
 *   1oo1: 1 − (1 − e^(−x))/x      1oo2: the mean of (1 − e^(−t))² over t from 0 to x
 *   2oo2: as 1oo1 of 2x           2oo3: the mean of 3q² − 2q³ with q = 1 − e^(−t)
 *
 * @param vote channels, failing independently and all tested together
 * @param x    failures unseen in one interval: rate × interval; 0 or more
 * @returns    0 to 1
 *
 * Holds      for channels as good as new after each test, and for tests that find everything.
 * Leaves out common cause (`pfdSharing`), time out of service for the test itself, and what a test does not find.
 * Source     the low-demand formulas of IEC 61508-6 in their exact form (openly taught in lessons on industrial instrumentation).
 * Checked    tests/core/review/combined/pfd.test.ts.
 */
export function pfdAvg(vote: Vote, x: number): number {
  const m = (k: number) => Math.expm1(-k * x) / x;
  switch (vote) {
    case '1oo1':
      return x < SMALL ? x / 2 - x ** 2 / 6 + x ** 3 / 24 : 1 + m(1);
    case '1oo2':
      return x < SMALL ? x ** 2 / 3 - x ** 3 / 4 + (7 * x ** 4) / 60 : 1 + 2 * m(1) - m(2) / 2;
    case '2oo2':
      return pfdAvg('1oo1', 2 * x);
    case '2oo3':
      return x < SMALL ? x ** 2 - (5 * x ** 3) / 4 + (19 * x ** 4) / 20 : 1 + (3 / 2) * m(2) - (2 / 3) * m(3);
  }
}

/**
 * The usual simplified forms: x/2, x²/3, x, x². Up to an eighth too high at x = 0.1; never too low.
 *
 * @param vote channels
 * @param x    failures unseen in one interval, much less than 1
 *
 * Source, checked: as `pfdAvg`.
 */
export function pfdSimplified(vote: Vote, x: number): number {
  switch (vote) {
    case '1oo1':
      return x / 2;
    case '1oo2':
      return x ** 2 / 3;
    case '2oo2':
      return x;
    case '2oo3':
      return x ** 2;
  }
}

/**
 * The simplified form with a part of all failures that takes every channel at once: usually what decides.
 *
 * @param beta that part, 0 to 1
 *
 * Source, checked: as `pfdAvg`.
 */
export function pfdSharing(vote: Vote, x: number, beta: number): number {
  return pfdSimplified(vote, x) + (beta * x) / 2;
}

/**
 * The same average for one safeguard by the days between its tests.
 *
 * @param perYear   failures a year that nobody sees before it is needed or tested
 * @param everyDays days between tests
 */
export function pfdOfTests(perYear: number, everyDays: number): number {
  return pfdAvg('1oo1', (perYear * everyDays) / YEAR_DAYS);
}

/**
 * How often something still happens behind layers that each fail now and then: the product of all.
 *
 * @param perYear how often it begins, a year
 * @param pfds    probability of each layer that it fails then; layers that share nothing with each other or with the cause
 */
export function mitigated(perYear: number, pfds: readonly number[]): number {
  return pfds.reduce((left, pfd) => left * pfd, perYear);
}
