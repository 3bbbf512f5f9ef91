'use client';

import { textOf } from '#core/forms/draft';
import type { Draft } from '#core/forms/field';
import { type FieldPath, type FormState, idOf } from './form-state';
import style from './form.module.css';

interface FigureHoursProps {
  hours: readonly Draft[];
  unit: string;
  path: FieldPath;
  change: FormState['change'];
}

/** A figure hour by hour: twenty-four numbers, local time. */
export function FigureHours({ hours, unit, path, change }: FigureHoursProps) {
  return (
    <ol className={style.hours} id={idOf(path)} tabIndex={-1}>
      {hours.map((value, hour) => {
        const said = `${String(hour).padStart(2, '0')}:00`;
        return (
          // The hours of a day keep their places.
          <li key={said}>
            <label>
              {said}
              <input
                inputMode="decimal"
                autoComplete="off"
                aria-label={`${said}, ${unit}`}
                value={textOf(value)}
                onChange={({ target }) => change([...path, 'hours', hour], target.value)}
              />
            </label>
          </li>
        );
      })}
    </ol>
  );
}
