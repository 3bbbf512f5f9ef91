import type { Plan } from '../../plans/plan';
import { example, withEquipment, withPlan } from './example/example';
import { entered } from './example/proven';
import { startsAtHalfLoad, startsInBusiestHour, normalDay } from './facts/cycling';
import { thermostatOf } from './facts/equipment';
import { numbersOf } from './facts/water';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** More starts an hour than this wear the contacts out. Common practice, no source. */
const MOST = 6;

/** A twentieth of a kelvin. The sump feels its heater before the tanks do, so it starts oftener than mixed water would. */
function narrow({ regulation }: Plan): Partial<Plan> {
  return regulation.kind === 'thermostat' ? { regulation: { ...regulation, lowC: 25.55, highC: 25.6 } } : {};
}

/** A dead band so narrow, or equipment so strong for its water, that the contacts wear out. */
export const rule: Rule = {
  id: 'short-cycling',
  title: 'A dead band makes a heater or chiller start more than six times an hour',
  why: 'Every start wears the contact, and a worn contact welds; a compressor started hot may not start at all.',
  source:
    'Six starts an hour: common practice, no source; welded contacts are the common end of a heater (zoopet.com, thread 97351)',
  grade: 'medium',
  remedy: 'wider-band',
  check: (context) => {
    const numbers = numbersOf(context);
    return context.system.equipment.flatMap((one, at) => {
      const band = one.type === 'heater' || one.type === 'chiller' ? thermostatOf(one) : null;
      if (band === null) return [];
      const day = normalDay(context, numbers);
      const counted = day === null ? 0 : startsInBusiestHour(day, at);
      const reckoned = startsAtHalfLoad(context, numbers, one, band);
      if (!(counted > MOST || reckoned > MOST)) return [];
      const consequence =
        counted > MOST
          ? `It starts ${counted} times in the busiest hour of a normal day.`
          : `On a day that asks for half of its power it starts ${Math.round(reckoned)} times an hour.`;
      const figures = [
        figure('dead band', band.highC - band.lowC, 'K', 2),
        { name: 'starts in the busiest hour of a normal day', value: day === null ? 'cannot be run' : `${counted}` },
        { name: 'starts an hour at half load', value: Number.isNaN(reckoned) ? 'not known' : reckoned.toFixed(1) },
      ];
      return [{ cause: one.name, consequence, figures }];
    });
  },
  // 77.5 to 78.5 °F, by 300 W in 552 L: a start every few hours.
  passing: () => example(),
  failing: () =>
    example(
      withEquipment('heater-1', { ratedW: entered(400), wattsRange: { minW: 360, maxW: 440 } }),
      withPlan('heater-1', narrow),
    ),
};
