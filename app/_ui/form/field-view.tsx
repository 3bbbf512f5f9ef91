'use client';

import { groupOf, listOf } from '#core/forms/draft';
import type { Draft, DraftGroup, Field } from '#core/forms/field';
import { AnsweredByField } from './answered-by-field';
import { ChoicesField } from './choices-field';
import { FieldFrame } from './field-frame';
import { FigureField } from './figure-field';
import { GroupField } from './group-field';
import { LineField } from './line-field';
import { ListField } from './list-field';
import { OneOfField } from './one-of-field';
import type { FieldPath, FieldState } from './form-state';

/** What a field is shown from. */
export interface FieldViewProps {
  field: Field;
  draft: Draft | undefined;
  /** What was typed of its neighbours, which may decide its unit. */
  beside: DraftGroup;
  path: FieldPath;
  state: FieldState;
}

/** One field of a form, whatever kind of answer it takes. */
export function FieldView({ field, draft, beside, path, state }: FieldViewProps) {
  switch (field.kind) {
    case 'text':
    case 'key':
    case 'date':
    case 'time':
    case 'number':
    case 'choice':
      return <LineField field={field} draft={draft} beside={beside} path={path} state={state} />;
    case 'figure':
      return <FigureField field={field} draft={groupOf(draft)} beside={beside} path={path} state={state} />;
    case 'choices':
      return (
        <FieldFrame field={field} beside={beside} path={path} state={state} asGroup>
          <ChoicesField field={field} chosen={listOf(draft)} path={path} state={state} />
        </FieldFrame>
      );
    case 'answered-by':
      return <AnsweredByField field={field} draft={groupOf(draft)} beside={beside} path={path} state={state} />;
    case 'group':
      return <GroupField field={field} draft={draft} beside={beside} path={path} state={state} />;
    case 'list':
      return (
        <ListField
          field={field}
          list={draft === undefined ? null : listOf(draft)}
          beside={beside}
          path={path}
          state={state}
        />
      );
    case 'one-of':
      return <OneOfField field={field} draft={draft} beside={beside} path={path} state={state} />;
  }
}
