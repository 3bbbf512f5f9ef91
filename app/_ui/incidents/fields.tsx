'use client';

import { type ReactNode, useId } from 'react';

interface FieldProps {
  name: string;
  title: string;
  start?: string;
  /** What stands below the title. */
  hint?: string;
}

/** A day and a time on the site's clocks; left empty it is now. */
export function MomentField({ name, title, start, hint }: FieldProps) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      {hint ? <Hint>{hint}</Hint> : null}
      <input id={id} type="datetime-local" name={name} defaultValue={start} />
    </label>
  );
}

/** A few words that may be left out. */
export function OptionalLine({ name, title, start, hint }: FieldProps) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      {hint ? <Hint>{hint}</Hint> : null}
      <input id={id} type="text" name={name} defaultValue={start} maxLength={2000} />
    </label>
  );
}

/** A number as people type it, with a point or a comma. */
export function NumberField({ name, title, start, hint }: FieldProps) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      {hint ? <Hint>{hint}</Hint> : null}
      <input id={id} type="text" inputMode="decimal" name={name} defaultValue={start} autoComplete="off" />
    </label>
  );
}

/** One of a few things. */
export function ChoiceField({
  name,
  title,
  start,
  options,
}: FieldProps & { options: Readonly<Record<string, string>> }) {
  const id = useId();
  return (
    <label htmlFor={id}>
      {title}
      <select id={id} name={name} defaultValue={start}>
        {Object.entries(options).map(([value, word]) => (
          <option key={value} value={value}>
            {word}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Something that was done or was not. */
export function TickField({ name, title }: { name: string; title: string }) {
  const id = useId();
  return (
    <label htmlFor={id} data-tick>
      <input id={id} type="checkbox" name={name} value="yes" />
      {title}
    </label>
  );
}

function Hint({ children }: { children: ReactNode }) {
  return <small>{children}</small>;
}
