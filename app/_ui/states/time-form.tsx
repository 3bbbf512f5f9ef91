'use client';

import { useId, useState } from 'react';
import type { Schedule } from '#core/rounds/schedule';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import type { StatePlace } from './state-forms';
import { type StateChoiceView, stateName } from './state-view';
import { ScheduleFields } from '../sheets/schedule-fields';
import sheets from '../sheets/sheets.module.css';

const LABELS = {
  state: 'State',
  lastsMin: 'Minutes',
  schedule: 'When',
  'schedule.rule': 'Comes round',
  'schedule.from': 'From',
  'schedule.until': 'Until',
  'schedule.times': 'Times of the day',
  'schedule.except': 'Days left out',
};

interface Props {
  place: StatePlace;
  entry: string;
  /** ISO date at the site, from which it begins. */
  today: string;
  choices: readonly StateChoiceView[];
  time: FormAction<unknown>;
}

/** Has a state begin by a schedule, written as that of a sheet. */
export function TimeForm({ place, entry, today, choices, time }: Props) {
  const id = useId();
  const [schedule, setSchedule] = useState<Schedule>({ rule: 'FREQ=DAILY', from: today, times: [{ at: '08:00' }] });
  return (
    <KeptForm
      action={time}
      ids={{ entry }}
      hidden={{ ...place, schedule: JSON.stringify(schedule) }}
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
      <div className={sheets.editor}>
        <ScheduleFields schedule={schedule} change={setSchedule} />
      </div>
    </KeptForm>
  );
}

/** Has it begin by the clock no more. */
export function EndTimedForm({ place, timed, end }: { place: StatePlace; timed: string; end: FormAction<unknown> }) {
  return (
    <KeptForm action={end} hidden={{ ...place, timed }} button="No longer" done="It begins by the clock no more." />
  );
}
