import { expect, test } from 'vitest';
import { contextOf } from '#core/review/context';
import { subjectsOf } from '#core/review/subjects';
import { type Trial, tryAt } from '#core/review/trial';
import { REVIEWED_ON } from '../../_support/build-system';
import { dice, randomSite } from './random-system';

const SYSTEMS = 12;
const WITHIN_S = 1;

/** One fault of a random system, followed with its alarms and signs, and without. */
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
    expect([seed, told(unwatched)]).toEqual([seed, told(watched)]);
    for (const [i, { atS }] of watched.record.harms.entries()) {
      expect(Math.abs((unwatched.record.harms[i]?.atS ?? Number.NaN) - atS)).toBeLessThan(WITHIN_S);
      harms++;
    }
  }
  // Nothing is shown where nothing happens.
  expect(harms).toBeGreaterThan(SYSTEMS / 3);
});
