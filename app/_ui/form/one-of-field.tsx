'use client';

import { emptyGroup, groupOf, textOf } from '#core/forms/draft';
import type { Draft, DraftGroup, Field } from '#core/forms/field';
import { describedBy, FieldFrame } from './field-frame';
import { type FieldPath, type FieldState, idOf } from './form-state';
import style from './form.module.css';

interface OneOfFieldProps {
  field: Extract<Field, { kind: 'one-of' }>;
  draft: Draft | undefined;
  beside: DraftGroup;
  path: FieldPath;
  state: FieldState;
}

/** One of several kinds, each with fields of its own; what two kinds share stays when the kind is changed. */
export function OneOfField({ field, draft, beside, path, state }: OneOfFieldProps) {
  const { by, of } = field;
  const group = groupOf(draft);
  const chosen = of.find(({ value }) => value === textOf(group[by]));
  const choose = (value: string) => {
    const fields = of.find((one) => one.value === value)?.fields ?? [];
    const kept = Object.entries(group).filter(([name]) => fields.some((one) => one.name === name));
    state.change(path, { ...emptyGroup(fields), ...Object.fromEntries(kept), [by]: value });
  };
  return (
    <FieldFrame field={field} beside={beside} path={path} state={state} asGroup>
      <select
        id={idOf([...path, by])}
        className={style.line}
        aria-label={field.label}
        aria-describedby={describedBy(path)}
        value={chosen?.value ?? ''}
        onChange={({ target }) => choose(target.value)}
      >
        <option value="" disabled={!field.optional}>
          {field.optional ? 'none' : 'choose'}
        </option>
        {of.map(({ value, name }) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
      {chosen ? (
        <div className={style.inner}>
          <state.Fields fields={chosen.fields} draft={group} path={path} state={state} />
        </div>
      ) : null}
    </FieldFrame>
  );
}
