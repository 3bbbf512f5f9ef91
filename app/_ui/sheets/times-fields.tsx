'use client';

import type { DueTime } from '#core/rounds/schedule';
import style from './sheets.module.css';

const NEXT_TIME: DueTime = { at: '18:00' };

/** Times of the day at which a sheet is due: on the clock, or before and after the site opens and closes. */
export function TimesFields({ times, change }: { times: DueTime[]; change: (times: DueTime[]) => void }) {
  const set = (index: number, next: DueTime) => change(times.map((one, at) => (at === index ? next : one)));
  return (
    <>
      {times.map((time, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two times may be alike while one of them is being changed
        <fieldset key={index}>
          <legend>{times.length > 1 ? `Time ${index + 1} of the day` : 'Time of the day'}</legend>
          <div className={style.row}>
            <label>
              {time.anchor ? 'At, when the site is closed' : 'At'}
              <input
                type="time"
                required
                value={time.at}
                onChange={({ target }) => set(index, { ...time, at: target.value })}
              />
            </label>
            <Anchor time={time} set={(next) => set(index, next)} />
            {times.length > 1 ? (
              <button type="button" onClick={() => change(times.filter((_, at) => at !== index))}>
                Leave out this time
              </button>
            ) : null}
          </div>
        </fieldset>
      ))}
      <div>
        <button type="button" onClick={() => change([...times, NEXT_TIME])}>
          Another time of the day
        </button>
      </div>
    </>
  );
}

function Anchor({ time, set }: { time: DueTime; set: (next: DueTime) => void }) {
  const { at, anchor, afterMin = 0 } = time;
  return (
    <>
      <label>
        Counted from
        <select
          value={anchor ?? ''}
          onChange={({ target }) => {
            const chosen = target.value === 'opening' || target.value === 'closing' ? target.value : undefined;
            set(chosen ? { at, anchor: chosen, afterMin } : { at });
          }}
        >
          <option value="">the clock</option>
          <option value="opening">opening</option>
          <option value="closing">closing</option>
        </select>
      </label>
      {anchor ? (
        <label>
          Minutes after (below 0: before)
          <input
            type="number"
            min={-1440}
            max={1440}
            step={1}
            value={afterMin}
            onChange={({ target }) => set({ at, anchor, afterMin: Math.trunc(Number(target.value)) || 0 })}
          />
        </label>
      ) : null}
    </>
  );
}
