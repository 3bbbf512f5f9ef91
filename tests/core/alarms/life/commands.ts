import fc from 'fast-check';
import { expect } from 'vitest';
import { led, type Said, type Standard } from './standard';
import type { RunAlarm, Suppressed } from './run-life';

/** An alarm as the table of the standard has it. */
export interface Model {
  state: Standard;
  latching: boolean;
  /** Whether its condition is present. */
  holds: boolean;
  /** The latched state to go back to when a suppression ends (T29); null: none. */
  latchedBefore: 'LUNACK' | 'LACK' | null;
}

const SHELVED: readonly Standard[] = ['SHLV', 'SUPR', 'OOS'];

type Command = fc.AsyncCommand<Model, RunAlarm>;

/** What somebody or something does, held to the table after each: where it has no row, nothing may have changed. */
function command(name: string, act: (alarm: RunAlarm) => Promise<void>, said: (model: Model) => Said | null): Command {
  return {
    check: () => true,
    run: async (model, alarm) => {
      const asked = said(model);
      if (asked !== null) follow(model, asked);
      await act(alarm);
      expect(await alarm.state(), `${name} in ${JSON.stringify(model)}`).toBe(model.state);
    },
    toString: () => name,
  };
}

function follow(model: Model, said: Said): void {
  const to = led(model.state, said, model.latching);
  if (to === null) return;
  if (SHELVED.includes(to)) {
    model.latchedBefore = model.state === 'LUNACK' || model.state === 'LACK' ? model.state : null;
    // Ours: a latched alarm that is active while it is suppressed stays latched, and is not acknowledged.
    if (model.latching && model.holds) model.latchedBefore = 'LUNACK';
  }
  model.state = said === 'ends, condition absent' ? (model.latchedBefore ?? to) : to;
}

/** The condition comes or goes. While the alarm is suppressed that is kept, and its state stays. */
function condition(holds: boolean): Command {
  return command(
    holds ? 'condition confirmed' : 'condition clears',
    (alarm) => alarm.condition(holds),
    (model) => {
      const isNew = model.holds !== holds;
      model.holds = holds;
      if (SHELVED.includes(model.state)) {
        if (model.latching && holds) model.latchedBefore = 'LUNACK';
        return null;
      }
      return isNew ? (holds ? 'condition confirmed' : 'condition clears') : null;
    },
  );
}

function suppression(by: Suppressed, said: Said): Command[] {
  return [
    command(
      said,
      (alarm) => alarm.suppress(by),
      () => said,
    ),
    command(
      `${by} ends`,
      (alarm) => alarm.unsuppress(by),
      ({ state, holds }) => {
        if (state !== by) return null;
        return holds ? 'ends, condition present' : 'ends, condition absent';
      },
    ),
  ];
}

const COMMANDS: readonly Command[] = [
  condition(true),
  condition(false),
  command(
    'acknowledge',
    (alarm) => alarm.acknowledge(),
    () => 'acknowledge',
  ),
  // T11 and T14: a reset counts only while the condition is absent.
  command(
    'reset',
    (alarm) => alarm.reset(),
    ({ holds }) => (holds ? null : 'reset'),
  ),
  command(
    're-alarm',
    (alarm) => alarm.realarm(),
    () => 're-alarm',
  ),
  ...suppression('SHLV', 'shelve'),
  ...suppression('SUPR', 'designed suppression'),
  ...suppression('OOS', 'take out of service'),
];

/** Any things done to an alarm one after another. */
export function anyLife(most: number) {
  return fc.commands(
    COMMANDS.map((one) => fc.constant(one)),
    { maxCommands: most, size: 'max' },
  );
}

/** Where the standard begins. */
export function normal(latching: boolean): Model {
  return { state: 'NORM', latching, holds: false, latchedBefore: null };
}
