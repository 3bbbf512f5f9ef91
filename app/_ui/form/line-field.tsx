'use client';

import { textOf, unitIn } from '#core/forms/draft';
import type { Draft, DraftGroup, Field } from '#core/forms/field';
import { describedBy, FieldFrame } from './field-frame';
import { type FieldPath, faultsAt, type FormState, idOf } from './form-state';
import style from './form.module.css';

interface LineFieldProps {
  field: Extract<Field, { kind: 'text' | 'key' | 'date' | 'time' | 'number' | 'choice' }>;
  draft: Draft | undefined;
  beside: DraftGroup;
  path: FieldPath;
  state: FormState;
}

/** A field with one control: a line of text, a number with its unit, a day, a time, a choice. */
export function LineField({ field, draft, beside, path, state }: LineFieldProps) {
  return (
    <FieldFrame field={field} beside={beside} path={path} state={state}>
      <Control field={field} draft={draft} beside={beside} path={path} state={state} />
    </FieldFrame>
  );
}

function Control({ field, draft, beside, path, state }: LineFieldProps) {
  const shared = {
    id: idOf(path),
    value: textOf(draft),
    'aria-describedby': describedBy(path),
    'aria-invalid': faultsAt(state.faults, path).length > 0 || undefined,
    onChange: ({ target }: { target: { value: string } }) => state.change(path, target.value),
  };
  switch (field.kind) {
    case 'choice':
      return (
        <select {...shared} className={style.line}>
          <option value="">{field.optional ? 'none' : 'choose'}</option>
          {field.options.map(({ value, name }) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>
      );
    case 'number':
      return (
        <span className={style.measured}>
          <input {...shared} className={style.number} inputMode="decimal" autoComplete="off" />
          <span className={style.unit}>{unitIn(field.unit, beside).symbol}</span>
        </span>
      );
    case 'text':
      return field.long ? (
        <textarea {...shared} className={style.line} rows={3} />
      ) : (
        <input {...shared} className={style.line} autoComplete="off" />
      );
    case 'key':
      return <input {...shared} className={style.line} autoComplete="off" autoCapitalize="none" spellCheck={false} />;
    case 'date':
    case 'time':
      return <input {...shared} className={style.number} type={field.kind} />;
  }
}
