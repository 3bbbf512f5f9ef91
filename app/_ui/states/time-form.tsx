'use client';

import { useId } from 'react';
import { DAYS } from '#core/facility/site';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import type { StatePlace } from './state-forms';
import { type StateChoiceView, stateName } from './state-view';
import style from './states.module.css';

const LABELS = { state: 'State', at: 'At', lastsMin: 'Minutes', days: 'Days' };

interface Props {
  place: StatePlace;
  entry: string;
  choices: readonly StateChoiceView[];
  time: FormAction<unknown>;
}

/** Has a state begin at certain times of the week. */
export function TimeForm({ place, entry, choices, time }: Props) {
  const id = useId();
  return (
    <KeptForm
      key={entry}
      action={time}
      hidden={{ ...place, entry }}
      labels={LABELS}
      button="Have it begin by the clock"
      done="It begins by the clock from now on."
    >
      <label htmlFor={`${id}s`}>
        State
        <select id={`${id}s`} name="state">
          {choices.map(({ state }) => (
            <option key={state} value={state}>
              {stateName(state)}
            </option>
          ))}
        </select>
      </label>
      <label htmlFor={`${id}a`}>
        At, by the clock of the site
        <input id={`${id}a`} name="at" type="time" required />
      </label>
      <label htmlFor={`${id}l`}>
        For how many minutes
        <input
          id={`${id}l`}
          name="lastsMin"
          type="number"
          inputMode="numeric"
          min="1"
          max="1440"
          defaultValue={15}
          required
        />
      </label>
      <fieldset className={style.answers}>
        <legend>On</legend>
        {DAYS.map((day) => (
          <label key={day} htmlFor={`${id}${day}`} className={style.seen}>
            <input id={`${id}${day}`} type="checkbox" name={`day:${day}`} value="yes" defaultChecked />
            {day}
          </label>
        ))}
      </fieldset>
    </KeptForm>
  );
}

/** Has it begin by the clock no more. */
export function EndTimedForm({ place, timed, end }: { place: StatePlace; timed: string; end: FormAction<unknown> }) {
  return (
    <KeptForm action={end} hidden={{ ...place, timed }} button="No longer" done="It begins by the clock no more." />
  );
}
