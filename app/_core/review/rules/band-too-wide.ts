import { example, withPlan } from './example/example';
import { thermostatOf } from './facts/equipment';
import { profilesOf } from './facts/limits';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** K: one degree Fahrenheit, rounded up, which is common practice and always passes. */
const ALWAYS_ENOUGH = 0.6;

/** A dead band that swings the water through more than its animals are usually kept at. */
export const rule: Rule = {
  id: 'band-too-wide',
  title: 'A dead band is wider than the animals are kept at',
  why: 'The water swings through the whole band many times a week, and its ends lie outside what the animals are used to.',
  source:
    'The usual band of the tolerance profile; built-in thermostats swing about one degree Fahrenheit either way (aquariumsetupclassic.blogspot.com, 2022-06, an article of 1993); half a kelvin is common practice, no source',
  grade: 'medium',
  remedy: 'narrower-band',
  check: (context) => {
    const usual = profilesOf(context).map(
      ({
        name,
        usual: {
          temperatureC: [low, high],
        },
      }) => ({ name, width: high - low }),
    );
    const [tightest] = usual.sort((a, b) => a.width - b.width);
    if (tightest === undefined) return [];
    const most = Math.max(ALWAYS_ENOUGH, tightest.width);
    return context.system.equipment.flatMap((one) => {
      const band = thermostatOf(one);
      const width = band === null ? 0 : band.highC - band.lowC;
      if (width <= most) return [];
      const consequence = `It lets the water swing further than ${tightest.name} is usually kept within.`;
      const figures = [figure('dead band', width, 'K', 2), figure('usual band', tightest.width, 'K', 2)];
      return [{ cause: one.name, consequence, figures }];
    });
  },
  // 77.5 to 78.5 °F.
  passing: () => example(),
  failing: () =>
    example(
      withPlan('heater-1', ({ regulation }) =>
        regulation.kind === 'thermostat' ? { regulation: { ...regulation, lowC: 23.7 } } : {},
      ),
    ),
};
