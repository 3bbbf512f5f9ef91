'use client';

import { emptyGroup, groupOf } from '#core/forms/draft';
import type { Draft, DraftGroup, Field } from '#core/forms/field';
import { FieldFrame } from './field-frame';
import type { FieldPath, FieldState } from './form-state';
import style from './form.module.css';

interface GroupFieldProps {
  field: Extract<Field, { kind: 'group' }>;
  draft: Draft | undefined;
  beside: DraftGroup;
  path: FieldPath;
  state: FieldState;
}

/** Fields that belong together; where they may be left out, they are there once somebody adds them. */
export function GroupField({ field, draft, beside, path, state }: GroupFieldProps) {
  const { label, optional, fields } = field;
  return (
    <FieldFrame field={field} beside={beside} path={path} state={state} asGroup>
      {draft === undefined ? null : (
        <div className={style.inner}>
          <state.Fields fields={fields} draft={groupOf(draft)} path={path} state={state} />
        </div>
      )}
      {optional ? (
        <button
          type="button"
          className={style.quiet}
          onClick={() => state.change(path, draft === undefined ? emptyGroup(fields) : undefined)}
        >
          {draft === undefined ? `Add: ${label}` : `Take out: ${label}`}
        </button>
      ) : null}
    </FieldFrame>
  );
}
