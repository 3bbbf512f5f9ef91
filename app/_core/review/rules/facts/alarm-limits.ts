import { alarmDesigns } from '../../alarm-design';
import type { LimitDesign } from '../../result';
import type { SensorQuantity } from '../../../facility/system';
import type { AlarmDefinition } from '../../../alarms/definition';
import { readingSymbol } from '../../../readings/figures';
import type { Breach, RuleContext } from '../rule';
import { figure } from './words';

/** One limit of an alarm, with what the review makes of it. */
export interface JudgedLimit {
  alarm: AlarmDefinition;
  quantity: SensorQuantity;
  unit: string;
  limit: LimitDesign;
}

/** Limits of the alarms of a system, each with what the review makes of it; none before a case has been judged. */
export function judgedLimits(context: RuleContext): JudgedLimit[] {
  if (context.judged.size === 0) return [];
  const { alarms, sensors } = context.system;
  return alarmDesigns(context).flatMap(({ alarm: key, limits }) => {
    const alarm = alarms.find((one) => one.key === key);
    const { on } = alarm ?? {};
    const quantity = on?.kind === 'sensor' ? sensors.find((one) => one.key === on.sensor)?.quantity : undefined;
    if (!alarm || quantity === undefined || quantity === 'leak') return [];
    return limits.map((limit) => ({ alarm, quantity, unit: readingSymbol(quantity, 'metric'), limit }));
  });
}

/** Name of a fault case, as it stands in a figure. */
function caseName(context: RuleContext, id: string | null): string {
  const found = id === null ? undefined : context.judged.get(id);
  return found ? `${found.title}, ${found.thing.name}` : 'not known';
}

/**
 * Alarms whose limit is passed too late for what has to follow, as a rule reports them.
 *
 * @param hasRoom       whether an earlier limit would still lie outside of what the healthy system does
 * @param consequence   what comes of it, in a sentence
 */
export function lateLimits(context: RuleContext, hasRoom: boolean, consequence: string): Breach[] {
  return judgedLimits(context).flatMap(({ alarm, unit, limit: one }) => {
    const { side, limit, proposed, proposedBy, healthy } = one;
    if (!one.isLate || one.hasRoom !== hasRoom || proposed === null) return [];
    return [
      {
        cause: alarm.name,
        consequence,
        figures: [
          figure('limit', limit, unit, 2),
          figure(`early enough ${side === 'above' ? 'up to' : 'down to'}`, proposed, unit, 2),
          figure(side === 'above' ? 'highest, healthy' : 'lowest, healthy', healthy.value, unit, 2),
          { name: 'fault case', value: caseName(context, proposedBy) },
        ],
      },
    ];
  });
}
