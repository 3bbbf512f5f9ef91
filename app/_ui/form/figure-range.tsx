'use client';

import { textOf } from '#core/forms/draft';
import { faultsAt, idOf } from './form-state';
import type { FigureFieldProps } from './figure-field';
import style from './form.module.css';

/** The plausible range of a figure and where it stands written, folded until there is something in it. */
export function FigureRange({ field, draft, path, state }: Omit<FigureFieldProps, 'beside'>) {
  const isFilled = ['low', 'high', 'source'].some((name) => textOf(draft[name]) !== '');
  const isWrong = faultsAt(state.faults, path, true).some((fault) => fault.path !== path.join('.'));
  const part = (name: 'low' | 'high' | 'source', label: string, unit: string) => (
    <label htmlFor={idOf([...path, name])}>
      {label}
      <span className={style.measured}>
        <input
          id={idOf([...path, name])}
          className={name === 'source' ? style.line : style.number}
          autoComplete="off"
          value={textOf(draft[name])}
          onChange={({ target }) => state.change([...path, name], target.value)}
        />
        {unit ? <span className={style.unit}>{unit}</span> : null}
      </span>
    </label>
  );
  return (
    <details className={style.range} open={isFilled || isWrong || undefined}>
      <summary>{field.label}: plausible range and source</summary>
      <div className={style.parts}>
        {part('low', 'Not below', field.unit.symbol)}
        {part('high', 'Not above', field.unit.symbol)}
        {part('source', 'Who measured it, or where it stands written', '')}
      </div>
    </details>
  );
}
