'use client';

import { DAYS } from '#core/facility/site';
import { type PlainRule, plainOf, ruleOf } from '#core/rounds/rule-words';
import type { Schedule } from '#core/rounds/schedule';
import { scheduleSaid } from '#core/rounds/schedule-words';
import { TimesFields } from './times-fields';
import style from './sheets.module.css';

interface ScheduleFieldsProps {
  schedule: Schedule;
  change: (schedule: Schedule) => void;
}

const STARTS: Record<PlainRule['is'], PlainRule> = {
  days: { is: 'days', every: 1 },
  weeks: { is: 'weeks', every: 1, on: ['mon'] },
  'months-weekday': { is: 'months-weekday', every: 1, nth: 1, on: 'mon' },
  'months-day': { is: 'months-day', every: 1, day: 1 },
};
const DAY_NAMES = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };
const NTHS: [number, string][] = [
  [1, 'first'],
  [2, 'second'],
  [3, 'third'],
  [4, 'fourth'],
  [-1, 'last'],
];
/** The days that every month has. */
const MONTH_DAYS = Array.from({ length: 28 }, (_, index) => index + 1);

/** When a sheet is due, in plain words. A rule that plain words do not reach is shown as it is, and kept until another is chosen. */
export function ScheduleFields({ schedule, change }: ScheduleFieldsProps) {
  const plain = plainOf(schedule.rule);
  const setRule = (next: PlainRule) => change({ ...schedule, rule: ruleOf(next) });
  return (
    <fieldset>
      <legend>Due</legend>
      <p aria-live="polite">{scheduleSaid(schedule)}</p>
      <div className={style.row}>
        <label>
          Comes round
          <select
            value={plain?.is ?? ''}
            onChange={({ target }) => {
              const next = Object.values(STARTS).find(({ is }) => is === target.value);
              if (next) setRule(next);
            }}
          >
            {plain ? null : <option value="">by its own rule</option>}
            <option value="days">every so many days</option>
            <option value="weeks">on days of the week</option>
            <option value="months-weekday">on a weekday of the month</option>
            <option value="months-day">on a day of the month</option>
          </select>
        </label>
        {plain ? <Every plain={plain} setRule={setRule} /> : null}
        {plain ? <Which plain={plain} setRule={setRule} /> : null}
      </div>
      {plain?.is === 'weeks' ? <WeekDays plain={plain} setRule={setRule} /> : null}
      <TimesFields times={schedule.times} change={(times) => change({ ...schedule, times })} />
      <Ends schedule={schedule} change={change} />
    </fieldset>
  );
}

interface RuleProps<R extends PlainRule = PlainRule> {
  plain: R;
  setRule: (next: PlainRule) => void;
}

function Every({ plain, setRule }: RuleProps) {
  const unit = plain.is === 'days' ? 'days' : plain.is === 'weeks' ? 'weeks' : 'months';
  return (
    <label>
      Every so many {unit}
      <input
        type="number"
        min={1}
        max={999}
        step={1}
        inputMode="numeric"
        value={plain.every}
        onChange={({ target }) => setRule({ ...plain, every: Math.max(1, Math.trunc(Number(target.value)) || 1) })}
      />
    </label>
  );
}

function Which({ plain, setRule }: RuleProps) {
  if (plain.is === 'months-day')
    return (
      <label>
        Day
        <select value={plain.day} onChange={({ target }) => setRule({ ...plain, day: Number(target.value) })}>
          {MONTH_DAYS.map((day) => (
            <option key={day} value={day}>
              {day}
            </option>
          ))}
          <option value={-1}>the last</option>
        </select>
      </label>
    );
  if (plain.is !== 'months-weekday') return null;
  return (
    <>
      <label>
        The
        <select value={plain.nth} onChange={({ target }) => setRule({ ...plain, nth: Number(target.value) })}>
          {NTHS.map(([nth, word]) => (
            <option key={nth} value={nth}>
              {word}
            </option>
          ))}
        </select>
      </label>
      <label>
        Weekday
        <select
          value={plain.on}
          onChange={({ target }) => setRule({ ...plain, on: DAYS.find((day) => day === target.value) ?? plain.on })}
        >
          {DAYS.map((day) => (
            <option key={day} value={day}>
              {DAY_NAMES[day]}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}

function WeekDays({ plain, setRule }: RuleProps<Extract<PlainRule, { is: 'weeks' }>>) {
  return (
    <fieldset>
      <legend>Days of the week</legend>
      <div className={style.days}>
        {DAYS.map((day) => (
          <label key={day} className={style.tick}>
            <input
              type="checkbox"
              checked={plain.on.includes(day)}
              // One day at least stays: a rule without any comes never.
              disabled={plain.on.length === 1 && plain.on[0] === day}
              onChange={({ target }) =>
                setRule({ ...plain, on: DAYS.filter((one) => (one === day ? target.checked : plain.on.includes(one))) })
              }
            />
            {DAY_NAMES[day]}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

function Ends({ schedule, change }: ScheduleFieldsProps) {
  const { until, except, notOnHolidays, ...rest } = schedule;
  const kept = { ...(until && { until }), ...(except && { except }), ...(notOnHolidays && { notOnHolidays }) };
  const leftOut = (text: string) => {
    const { except: _, ...others } = kept;
    const days = text.split(/[\s,]+/).filter((day) => day !== '');
    change({ ...rest, ...others, ...(days.length > 0 && { except: days }) });
  };
  return (
    <>
      <div className={style.row}>
        <label>
          From
          <input
            type="date"
            required
            value={rest.from}
            onChange={({ target }) => change({ ...rest, ...kept, from: target.value })}
          />
        </label>
        <label>
          Until (may stay empty)
          <input
            type="date"
            value={until ?? ''}
            onChange={({ target }) => {
              const { until: _, ...others } = kept;
              change({ ...rest, ...others, ...(target.value !== '' && { until: target.value }) });
            }}
          />
        </label>
      </div>
      <label>
        Days left out, as 2026-12-25, with spaces between
        <input defaultValue={except?.join(' ') ?? ''} onBlur={({ target }) => leftOut(target.value)} />
      </label>
      <label className={style.tick}>
        <input
          type="checkbox"
          checked={notOnHolidays ?? false}
          onChange={({ target }) => {
            const { notOnHolidays: _, ...others } = kept;
            change({ ...rest, ...others, ...(target.checked && { notOnHolidays: true }) });
          }}
        />
        Not on the holidays of the site (animals have none)
      </label>
    </>
  );
}
