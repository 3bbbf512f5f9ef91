import type { AlarmDefinition } from '../alarms/definition';
import type { Swing } from '../alarms/design/limit';
import { stateMinOf } from '../equipment/defaults';
import type { StateName } from '../facility/system';
import { noUpset } from '../faults/upset';
import { type Blueprint, buildMachine } from '../simulate/build-machine';
import { courseOf } from '../simulate/course-of';
import { run } from '../simulate/run';
import { DAY, HOUR, MINUTE } from '../time/week';
import type { Context } from './context';
import type { Trial } from './trial';

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

/** A healthy course: from when on the clock, how it went, and how long it is looked at, s. */
export interface HealthyTrial extends Pick<Trial, 'machine' | 'record'> {
  state: StateName;
  clockS: number;
  untilS: number;
}

/** Courses of a healthy system: a day of normal running, and each state it is put into, with the hour after it. */
export function healthyTrials(context: Context): HealthyTrial[] {
  const view = context.view('nominal');
  const blueprintOf = (state: StateName, hour: number): Blueprint => ({
    ...context.simulated,
    resolved: view.resolved,
    upset: noUpset(),
    credited: context.credit.claimed,
    state,
    profileOf: view.profileOf,
    snapshot: view.nominal.at(hour),
  });
  const day = { machine: buildMachine(blueprintOf('normal', 0)), record: view.nominal.record };
  const put = context.system.states.map(({ name: state, lastsMin }): HealthyTrial => {
    const untilS = (lastsMin?.value ?? stateMinOf(state).value) * MINUTE + HOUR;
    const machine = buildMachine(blueprintOf(state, ANY_HOUR));
    const clockS = ANY_HOUR * HOUR;
    return { state, clockS, untilS, machine, record: run(machine, { untilS, clockS, stopAt: null, settle: false }) };
  });
  return [{ state: 'normal', clockS: 0, untilS: DAY, ...day }, ...put];
}

/**
 * How far a healthy system goes in what an alarm is held to; states in which it is not called are left out.
 *
 * @returns   nothing for an alarm that compares no signal of the model
 */
export function healthyCourses(alarm: AlarmDefinition, trials: readonly HealthyTrial[]): HealthyCourse[] {
  return trials.flatMap(({ state, clockS, untilS, machine, record }) => {
    const [compared] = machine.alarms.find(({ key }) => key === alarm.key)?.watches ?? [];
    if (!compared || (alarm.suppressedIn ?? []).some((one) => one === state)) return [];
    const valueAt = courseOf({ machine, record }, clockS, [compared.signal]);
    const values = Array.from({ length: Math.ceil(untilS / LOOK_S) + 1 }, (_, k) =>
      valueAt(Math.min(untilS, k * LOOK_S)),
    ).filter((value) => !Number.isNaN(value));
    if (values.length === 0) return [];
    const raisedS = record.alarms.get(alarm.key);
    const isRaised = raisedS !== undefined && raisedS <= untilS;
    return [{ state, swing: { low: Math.min(...values), high: Math.max(...values) }, isRaised }];
  });
}
