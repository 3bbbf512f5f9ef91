// @ts-check
// The closing counts of the test runners, read off what they printed.
import { stripVTControlCharacters } from 'node:util';

const LINES = {
  vitest: /^\s*(Test Files|Tests)\s+.*\d/,
  playwright: /^\s+\d+ (passed|failed|flaky|skipped|interrupted|did not run)\b/,
};

/**
 * @param {'vitest' | 'playwright'} runner which one printed
 * @param {string} output everything it printed
 * @returns {string[]} its closing lines, as it wrote them, without colours
 */
export function closingLines(runner, output) {
  const lines = stripVTControlCharacters(output).split('\n');
  return lines.filter((line) => LINES[runner].test(line));
}

/**
 * @param {string[]} lines closing lines of either runner
 * @returns {{ passed: number, failed: number }} tests, not files
 */
export function tally(lines) {
  const tests = lines.filter((line) => !line.includes('Test Files'));
  const sum = (/** @type {RegExp} */ what) =>
    tests.reduce((total, line) => total + Number(line.match(what)?.[1] ?? 0), 0);
  return { passed: sum(/(\d+) passed/), failed: sum(/(\d+) (?:failed|interrupted|did not run)/) };
}
