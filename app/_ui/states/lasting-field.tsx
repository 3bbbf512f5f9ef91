'use client';

import { useId } from 'react';
import { inUnit } from './state-view';
import style from './states.module.css';

/** How long, as a number and its unit. @param minutes what it starts with */
export function LastingField({ title, minutes }: { title: string; minutes: number }) {
  const id = useId();
  const { lasts, unit } = inUnit(minutes);
  return (
    <div className={style.lasting}>
      <label htmlFor={id}>
        {title}
        <input
          id={id}
          name="lasts"
          type="number"
          inputMode="decimal"
          min="1"
          step="any"
          defaultValue={lasts}
          required
        />
      </label>
      <label htmlFor={`${id}u`}>
        in
        <select id={`${id}u`} name="unit" defaultValue={unit}>
          <option value="minutes">minutes</option>
          <option value="hours">hours</option>
          <option value="days">days</option>
        </select>
      </label>
    </div>
  );
}
