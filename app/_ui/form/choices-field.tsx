'use client';

import type { Draft, Option } from '#core/forms/field';
import type { FieldPath, FormState } from './form-state';
import style from './form.module.css';

interface ChoicesFieldProps {
  field: { options: readonly Option[] };
  chosen: readonly Draft[];
  path: FieldPath;
  state: FormState;
}

/** Several of a set, in the order of the set. */
export function ChoicesField({ field: { options }, chosen, path, state }: ChoicesFieldProps) {
  const toggle = (value: string, isOn: boolean) => {
    const among = options.map((option) => option.value).filter((one) => (one === value ? isOn : chosen.includes(one)));
    state.change(path, among);
  };
  if (options.length === 0) return <p className={style.start}>There is nothing to choose from yet.</p>;
  return (
    <ul className={style.choices}>
      {options.map(({ value, name }) => (
        <li key={value}>
          <label>
            <input
              type="checkbox"
              checked={chosen.includes(value)}
              onChange={({ target }) => toggle(value, target.checked)}
            />
            {name}
          </label>
        </li>
      ))}
    </ul>
  );
}
