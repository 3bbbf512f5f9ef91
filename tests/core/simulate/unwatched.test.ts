import { expect, test } from 'vitest';
import { contextOf } from '#core/review/context';
import { subjectsOf } from '#core/review/subjects';
import { type Trial, tryAt } from '#core/review/trial';
import { REVIEWED_ON } from '../../_support/build-system';
import { dice, randomSite } from './random-system';

const SYSTEMS = 12;
const WITHIN_S = 1;

/** One fault of a random system, followed to the end with its alarms and signs, and without them to its first harm. */
function bothWays(seed: number): { watched: Trial; unwatched: Trial } {
  const site = randomSite(seed);
  const [system] = site.systems;
  if (!system) throw new Error('a random site has a system');
  const context = contextOf(site, system, REVIEWED_ON);
  const subjects = subjectsOf(site, system);
  const subject = subjects[Math.floor(dice(seed + 900)() * subjects.length)];
  if (!subject) throw new Error('a random system has fault cases');
  const trial = (unwatched: boolean) => tryAt(context, context.view('nominal'), subject, 'claimed', 2, unwatched);
  return { watched: trial(false), unwatched: trial(true) };
}

test('the water goes the same way whether or not anybody follows alarms and signs', () => {
  let harms = 0;
  for (let seed = 101; seed < 101 + SYSTEMS; seed++) {
    const { watched, unwatched } = bothWays(seed);
    expect(unwatched.machine.watches.length).toBeLessThan(watched.machine.watches.length);
    expect(unwatched.record.signs.size).toBe(0);
    const told = ({ record }: Trial) => record.harms.map(({ what, direction, tank }) => [what, direction, tank]);
    // Whoever asks only whether anything is harmed is told of the first harm, and of no harm where there is none.
    const first = unwatched.record.harms.length;
    expect([seed, first > 0]).toEqual([seed, watched.record.harms.length > 0]);
    expect([seed, told(unwatched)]).toEqual([seed, told(watched).slice(0, first)]);
    for (const [i, { atS }] of unwatched.record.harms.entries()) {
      expect(Math.abs((watched.record.harms[i]?.atS ?? Number.NaN) - atS)).toBeLessThan(WITHIN_S);
      harms++;
    }
  }
  // Nothing is shown where nothing happens.
  expect(harms).toBeGreaterThan(SYSTEMS / 3);
});
