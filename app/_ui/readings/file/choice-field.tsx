import { type ReactNode, useId } from 'react';
import style from './file.module.css';

interface ChoiceFieldProps {
  label: ReactNode;
  value: string;
  options: readonly (readonly [string, string])[];
  choose: (value: string) => void;
  /** What is asked of it, as long as it is not said. */
  asked?: string | undefined;
  about?: string;
  /** Name for those who do not see the label beside it. */
  hidden?: boolean;
  disabled?: boolean;
}

/** One thing to be chosen from a list, and what is asked of it. */
export function ChoiceField({ label, value, options, choose, asked, about, hidden, disabled }: ChoiceFieldProps) {
  const id = useId();
  return (
    <div className={style.field} data-wrong={asked ? '' : undefined}>
      <label htmlFor={id} className={hidden ? style.hidden : undefined}>
        {label}
      </label>
      <select
        id={id}
        value={value}
        disabled={disabled}
        aria-describedby={asked ? `${id}a` : undefined}
        onChange={(event) => choose(event.target.value)}
      >
        {options.map(([option, name]) => (
          <option key={option} value={option}>
            {name}
          </option>
        ))}
      </select>
      {asked ? (
        <p id={`${id}a`} className={style.asked}>
          {asked}
        </p>
      ) : null}
      {about ? <p className={style.hint}>{about}</p> : null}
    </div>
  );
}
