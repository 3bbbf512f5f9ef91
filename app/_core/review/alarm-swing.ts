import type { AlarmDefinition } from '../alarms/definition';
import type { Swing } from '../alarms/design/limit';
import { stateMinOf } from '../equipment/defaults';
import type { StateName } from '../facility/system';
import { fault as stateAlone } from '../faults/modes/state-alone';
import { courseOf } from '../simulate/course-of';
import { DAY, HOUR, MINUTE } from '../time/week';
import type { Context } from './context';
import { type Trial, tryAt } from './trial';

/** Local hour at which a state is looked at with nothing wrong. */
const ANY_HOUR = 12;
/** s between two looks at a healthy course. */
const LOOK_S = 300;

/** How far a healthy system takes what a limit is set on, by operating state. */
export interface HealthyCourse {
  state: StateName;
  swing: Swing;
  /** Whether the alarm is raised in it, its delay counted. */
  isRaised: boolean;
}

/** Courses of a healthy system: a day of normal running, and each state it is put into, with the hours after it. */
export function healthyTrials(context: Context): { state: StateName; trial: Trial; untilS: number }[] {
  const view = context.view('nominal');
  const { key, name, states } = context.system;
  const thing = { kind: 'system' as const, key, name };
  return (['normal', ...states.map((one) => one.name)] as StateName[]).map((state) => {
    const trial = tryAt(context, view, { fault: stateAlone, thing, state }, 'claimed', ANY_HOUR);
    const lastsMin = states.find((one) => one.name === state)?.lastsMin?.value;
    const untilS = state === 'normal' ? DAY : (lastsMin ?? stateMinOf(state).value) * MINUTE + HOUR;
    return { state, trial, untilS: Math.min(untilS, trial.record.endS) };
  });
}

/**
 * How far a healthy system goes in what an alarm is held to; states in which it is not called are left out.
 *
 * @returns   nothing for an alarm that compares no signal of the model
 */
export function healthyCourses(alarm: AlarmDefinition, trials: ReturnType<typeof healthyTrials>): HealthyCourse[] {
  return trials.flatMap(({ state, trial, untilS }) => {
    const [compared] = trial.machine.alarms.find(({ key }) => key === alarm.key)?.watches ?? [];
    if (!compared || (alarm.suppressedIn ?? []).some((one) => one === state)) return [];
    const valueAt = courseOf(trial, trial.hour * HOUR, [compared.signal]);
    const values = Array.from({ length: Math.ceil(untilS / LOOK_S) + 1 }, (_, k) =>
      valueAt(Math.min(untilS, k * LOOK_S)),
    ).filter((value) => !Number.isNaN(value));
    if (values.length === 0) return [];
    const raisedS = trial.record.alarms.get(alarm.key);
    const isRaised = raisedS !== undefined && raisedS <= untilS;
    return [{ state, swing: { low: Math.min(...values), high: Math.max(...values) }, isRaised }];
  });
}
