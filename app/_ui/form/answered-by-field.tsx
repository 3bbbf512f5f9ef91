'use client';

import { listOf, textOf } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { ChoicesField } from './choices-field';
import { describedBy, FieldFrame } from './field-frame';
import { type FieldPath, type FormState, idOf } from './form-state';
import style from './form.module.css';

interface AnsweredByFieldProps {
  field: Extract<Field, { kind: 'answered-by' }>;
  draft: DraftGroup;
  beside: DraftGroup;
  path: FieldPath;
  state: FormState;
}

/** Who answers: whoever is on the rota, nobody, or people by name. */
export function AnsweredByField({ field, draft, beside, path, state }: AnsweredByFieldProps) {
  const by = textOf(draft.by);
  return (
    <FieldFrame field={field} beside={beside} path={path} state={state} within>
      <select
        id={idOf(path)}
        className={style.line}
        value={by}
        aria-describedby={describedBy(path)}
        onChange={({ target }) => state.change([...path, 'by'], target.value)}
      >
        <option value="">choose</option>
        <option value="rota">the rota</option>
        <option value="nobody">nobody</option>
        <option value="people">these people alone</option>
      </select>
      {by === 'people' ? (
        <ChoicesField field={field} chosen={listOf(draft.people)} path={[...path, 'people']} state={state} />
      ) : null}
    </FieldFrame>
  );
}
