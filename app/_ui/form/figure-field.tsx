'use client';

import { emptyHours, listOf, textOf } from '#core/forms/draft';
import type { DraftGroup, Field } from '#core/forms/field';
import { describedBy, FieldFrame } from './field-frame';
import { type FieldPath, faultsAt, type FormState, idOf } from './form-state';
import { FigureRange } from './figure-range';
import { FigureHours } from './figure-hours';
import style from './form.module.css';

/** What a figure is shown from. */
export interface FigureFieldProps {
  field: Extract<Field, { kind: 'figure' }>;
  draft: DraftGroup;
  beside: DraftGroup;
  path: FieldPath;
  state: FormState;
}

/** Where a figure can be said to come from. */
const ORIGINS = [
  { value: 'entered', name: 'entered' },
  { value: 'measured', name: 'measured' },
  { value: 'unknown', name: 'not known' },
];

/** A figure: its value and unit, where it comes from, and folded its plausible range and source. */
export function FigureField(props: FigureFieldProps) {
  const { field, draft, beside, path, state } = props;
  const isFilled = textOf(draft.value).trim() !== '' || draft.hours !== undefined;
  return (
    <FieldFrame field={field} beside={beside} path={path} state={state} isFilled={isFilled} within>
      {draft.hours === undefined ? (
        <WholeDay {...props} />
      ) : (
        <FigureHours hours={listOf(draft.hours)} unit={field.unit.symbol} path={path} change={state.change} />
      )}
      {field.hours ? <HoursSwitch {...props} /> : null}
    </FieldFrame>
  );
}

function WholeDay({ field, draft, path, state }: FigureFieldProps) {
  const from = textOf(draft.from);
  const origins = from === 'default' ? [...ORIGINS, { value: 'default', name: 'a default' }] : ORIGINS;
  return (
    <>
      <span className={style.measured}>
        <input
          id={idOf(path)}
          className={style.number}
          inputMode="decimal"
          autoComplete="off"
          value={textOf(draft.value)}
          disabled={from === 'unknown'}
          aria-describedby={describedBy(path)}
          aria-invalid={faultsAt(state.faults, path, true).length > 0 || undefined}
          onChange={({ target }) => state.change([...path, 'value'], target.value)}
        />
        <span className={style.unit}>{field.unit.symbol}</span>
        <select
          aria-label={`${field.label}: comes from`}
          value={from === '' ? 'entered' : from}
          onChange={({ target }) =>
            state.change(path, {
              ...draft,
              from: target.value,
              ...(target.value === 'unknown' ? { value: '', low: '', high: '', source: '' } : {}),
            })
          }
        >
          {origins.map(({ value, name }) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </select>
      </span>
      {from === 'unknown' ? null : <FigureRange field={field} draft={draft} path={path} state={state} />}
    </>
  );
}

function HoursSwitch({ field, draft, path, state }: FigureFieldProps) {
  const byHour = draft.hours !== undefined;
  return (
    <button
      type="button"
      className={style.quiet}
      onClick={() =>
        state.change(
          path,
          byHour
            ? { value: textOf(listOf(draft.hours)[0]), from: 'entered' }
            : { hours: emptyHours(textOf(draft.value)) },
        )
      }
    >
      {byHour ? `${field.label}: the same all day` : `${field.label}: hour by hour`}
    </button>
  );
}
