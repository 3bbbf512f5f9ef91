import type { AlarmDefinition } from '#core/alarms/definition';
import type { Consequence, Priority } from '#core/alarms/design/priority';
import type { SensorQuantity } from '#core/facility/system';
import { readingSaid } from '#core/readings/figures';
import type { AlarmDesign, LimitDesign } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { lasting } from '../words/lasting';

/** What follows when nobody does anything. */
export const CONSEQUENCE_WORDS: Readonly<Record<Consequence, string>> = {
  animals: 'animals are harmed',
  floor: 'water on the floor',
  equipment: 'equipment is harmed',
  none: 'no harm in any case that is tried',
};

/** The priority that counts: somebody's own, else the proposed one; null while nothing is known. */
export function priorityOf(alarm: AlarmDefinition, design: AlarmDesign | undefined): Priority | null {
  return alarm.priority?.level ?? design?.proposed ?? null;
}

/** Why the review proposes a priority: what follows, and the time in which acting still helps. */
export function whyPriority({ consequence, availableS, isCarried }: AlarmDesign): string {
  if (!isCarried) return 'the model raises no such alarm, so nothing is known of the time';
  if (availableS === null) return CONSEQUENCE_WORDS[consequence];
  const time = availableS > 0 ? `${lasting(availableS)} to act in` : `${lasting(-availableS)} too late`;
  return `${CONSEQUENCE_WORDS[consequence]}; ${time}`;
}

/** What is wrong with how an alarm is designed, a sentence each; none when nothing is. */
export function problemsOf(
  alarm: AlarmDefinition,
  design: AlarmDesign | undefined,
  quantity: SensorQuantity | undefined,
  units: Custom,
): string[] {
  return [
    ...(alarm.answeredBy === 'nobody' ? ['Nobody answers it.'] : []),
    ...(alarm.whatToDo === undefined ? ['Nothing is written of what to do.'] : []),
    ...(alarm.cause === undefined || alarm.consequence === undefined ? ['Cause or consequence is not written.'] : []),
    ...(design?.needsMore ? ['So soon after it that a person cannot be the only protection here.'] : []),
    ...(design?.isCarried && design.raisedIn === 0 ? ['No fault case that is tried raises it.'] : []),
    ...(design?.limits ?? []).flatMap((limit) => limitProblem(limit, (value) => said(quantity, units, value))),
  ];
}

function limitProblem(limit: LimitDesign, value: (n: number) => string): string[] {
  const { side, healthy, isWithin, isRaisedHealthy, proposed, isLate, hasRoom, hopeless } = limit;
  const farthest = `${side === 'above' ? 'highest' : 'lowest'} ${value(healthy.value)}`;
  const when = healthy.state === 'normal' ? 'normal running' : healthy.state.replaceAll('-', ' ');
  const calls = isRaisedHealthy ? 'it calls with nothing wrong' : 'only its delay keeps it from calling';
  return [
    ...(isWithin ? [`The limit lies within the normal swing (${farthest}, ${when}): ${calls}.`] : []),
    ...(isLate && hasRoom && proposed !== null
      ? [`Beyond the last chance: early enough is ${side === 'above' ? 'up to' : 'down to'} ${value(proposed)}.`]
      : []),
    ...(isLate && !hasRoom && proposed !== null
      ? [
          `Early enough would be ${value(proposed)}, within the normal swing (${farthest}, ${when}): add another protection.`,
        ]
      : []),
    ...(hopeless > 0
      ? [`In ${hopeless} ${hopeless === 1 ? 'case' : 'cases'} no limit is early enough at the worst hour of the week.`]
      : []),
  ];
}

function said(quantity: SensorQuantity | undefined, units: Custom, value: number): string {
  return quantity === undefined ? String(value) : readingSaid(quantity, units, value);
}
