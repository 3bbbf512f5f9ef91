'use client';

import { emptyGroup, groupOf } from '#core/forms/draft';
import type { Draft, DraftGroup, Field } from '#core/forms/field';
import { withArticle } from '../words/article';
import { FieldFrame } from './field-frame';
import { type FieldPath, faultsAt, type FieldState, idOf } from './form-state';
import style from './form.module.css';

interface ListFieldProps {
  field: Extract<Field, { kind: 'list' }>;
  /** Null where nothing was given. */
  list: readonly Draft[] | null;
  beside: DraftGroup;
  path: FieldPath;
  state: FieldState;
}

/** Members of a list, one under another, to which more can be added. */
export function ListField({ field, list: given, beside, path, state }: ListFieldProps) {
  const { one, item, label } = field;
  const list = given ?? [];
  return (
    <FieldFrame field={field} beside={beside} path={path} state={state} asGroup>
      {list.length > 0 ? (
        <ol className={style.members}>
          {list.map((member, at) => {
            const here = [...path, at];
            const said = `${one} ${at + 1}`;
            return (
              // Members have no name of their own that stays while they are written; their place is what tells them apart.
              <li key={idOf(here)}>
                <fieldset id={idOf(here)} tabIndex={-1} className={style.inner}>
                  <legend>{said}</legend>
                  {faultsAt(state.faults, here).map(({ message }) => (
                    <p key={message} className={style.fault}>
                      {message}
                    </p>
                  ))}
                  <state.Fields fields={item} draft={groupOf(member)} path={here} state={state} />
                  <button type="button" className={style.quiet} onClick={() => state.change(here, undefined)}>
                    Take out {said}
                  </button>
                </fieldset>
              </li>
            );
          })}
        </ol>
      ) : (
        <p className={style.start}>{given === null ? 'Nothing is said of it.' : 'None.'}</p>
      )}
      <button
        type="button"
        className={style.quiet}
        onClick={() => state.change([...path, list.length], emptyGroup(item))}
        aria-label={`${label}: add ${withArticle(one)}`}
      >
        Add {withArticle(one)}
      </button>
    </FieldFrame>
  );
}
