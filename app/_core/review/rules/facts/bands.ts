import type { Equipment } from '../../../facility/system';
import type { LineFigure } from '../../result';
import type { RuleContext } from '../rule';
import { ofType, thermostatOf } from './equipment';
import { joinedWith, numbersOf } from './water';
import { figure } from './words';

/** A heater and a chiller that act on the same water, and how far the chiller's band lies above the heater's, K. */
export interface BandGap {
  heater: Equipment;
  chiller: Equipment;
  heaterHighC: number;
  chillerLowC: number;
  /** K; below 0 the bands overlap. */
  gap: number;
}

/** Every heater beside every chiller of the same water. */
export function bandGaps(context: RuleContext): BandGap[] {
  const chillers = ofType(context, 'chiller');
  if (chillers.length === 0) return [];
  const numbers = numbersOf(context);
  return ofType(context, 'heater').flatMap((heater) => {
    const hot = thermostatOf(heater);
    const joined = joinedWith(context, numbers, heater.tank);
    return chillers.flatMap((chiller) => {
      const cold = thermostatOf(chiller);
      if (hot === null || cold === null || !joined.includes(chiller.tank)) return [];
      const gap = cold.lowC - hot.highC;
      return [{ heater, chiller, heaterHighC: hot.highC, chillerLowC: cold.lowC, gap }];
    });
  });
}

/** Where the heater ends and the chiller ends, °C. */
export function bandEnds({ heaterHighC, chillerLowC }: BandGap): LineFigure[] {
  return [figure('heats up to', heaterHighC, '°C', 2), figure('cools down to', chillerLowC, '°C', 2)];
}
