'use client';

import { isFirst, isThere } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { Fold } from '../frame/fold';
import { FieldView } from './field-view';
import { type FieldPath, type FieldState, type FieldsProps, faultsAt, type FormState, keyAfter } from './form-state';
import style from './form.module.css';

/** The fields of a form, or of a group within one. What does not belong to the chosen type is not there. */
export function FormFields({ fields, draft, path = [], state, more }: FieldsProps) {
  const there = fields.filter((field) => isThere(field, draft));
  const first = more === undefined ? there : there.filter((field) => isFirst(field, draft));
  const rest = there.filter((field) => !first.includes(field));
  const wrong = rest.some(({ name }) => faultsAt(state.faults, [...path, name], true).length > 0);
  const within: FieldState = { ...state, Fields: FormFields, change: withKey(fields, draft, path, state) };
  const view = (field: Field) => (
    <FieldView
      key={field.name}
      field={field}
      draft={draft[field.name]}
      beside={draft}
      path={[...path, field.name]}
      state={within}
    />
  );
  return (
    <div className={style.fields}>
      {first.map(view)}
      {rest.length > 0 ? (
        <Fold title={`${more} (${rest.length})`} open={wrong}>
          <div className={style.fields}>{rest.map(view)}</div>
        </Fold>
      ) : null}
    </div>
  );
}

/** Lets the key of a new thing follow its name. */
function withKey(fields: readonly Field[], draft: DraftGroup, path: FieldPath, { change }: FormState) {
  return (at: FieldPath, part: DraftGroup[string] | undefined) => {
    change(at, part);
    const field = fields.find(({ name }) => name === at.at(-1));
    if (!field || at.length !== path.length + 1) return;
    const key = keyAfter(fields, draft, field, part);
    if (key !== null) change([...path, 'key'], key);
  };
}
