import type { Equipment } from '../../facility/system';
import type { Grade } from '../result';
import { example, withPlan } from './example/example';
import { ofType, thermostatOf } from './facts/equipment';
import type { Rule, RuleContext } from './rule';

/** Whether something with a probe of its own opens the heater's circuit when the water is too warm. */
function hasCutOut({ plan }: Equipment): boolean {
  return plan.cutOuts.some(({ quantity, above }) => quantity === 'temperature' && above !== undefined);
}

/**
 * Whether one sensor that reads too low is overruled. The highest of two does that, and so does the median of three;
 * the lowest never does, and the median of two is their mean, which a probe in cold air pulls down with it.
 */
function isOverruled(heater: Equipment): boolean {
  const thermostat = thermostatOf(heater);
  if (thermostat === null) return false;
  const { length } = thermostat.sensors;
  return thermostat.vote === 'highest' ? length > 1 : thermostat.vote === 'median' && length > 2;
}

/** A heater too small to harm anything though it never stops, whatever is untested, is a matter of order, not of lives. */
function gradeHere({ judged }: RuleContext, { key }: Equipment): Grade {
  const welded = judged.get(`heater-on:${key}:normal`);
  return welded?.tested.verdict === 'holds' && !welded.unsure ? 'low' : 'high';
}

/** A heater that one probe alone, or one contact alone, can leave on. */
export const rule: Rule = {
  id: 'heater-alone',
  title: 'A heater has neither an independent cut-out nor a second sensor that could overrule the first',
  why: 'One probe out of the water, or one welded contact, then heats without end.',
  source:
    'A touch pool for rays at a zoo went from 26.1 to 31.7 °C in one night of 2008; the back-up did not act, and 16 of 33 rays died (6abc.com, archive 6286645); welded contacts are the common end of a heater (zoopet.com, thread 97351)',
  grade: 'high',
  remedy: 'cut-out',
  check: (context) =>
    ofType(context, 'heater').flatMap((heater) => {
      if (hasCutOut(heater) || isOverruled(heater)) return [];
      const thermostat = thermostatOf(heater);
      const many = thermostat?.sensors.length ?? 0;
      const consequence =
        many > 1
          ? `Of its ${many} sensors (${thermostat?.vote}), one that reads too low is enough to keep it on, and nothing else cuts it off.`
          : 'Nothing but its one control stands between it and the highest temperature it can reach.';
      const figures = [{ name: 'sensors with a vote', value: String(many) }];
      return [{ cause: heater.name, consequence, figures, grade: gradeHere(context, heater) }];
    }),
  passing: () =>
    example(
      withPlan('heater-1', (plan) => ({
        cutOuts: [],
        regulation:
          plan.regulation.kind === 'thermostat'
            ? { ...plan.regulation, sensors: ['sump-temperature', 'display-temperature'], vote: 'highest' }
            : plan.regulation,
      })),
    ),
  failing: () => example(withPlan('heater-1', () => ({ cutOuts: [] }))),
};
