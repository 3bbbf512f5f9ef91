'use client';

import type { Range } from '#core/rounds/check';
import style from './sheets.module.css';

interface RangeFieldsProps {
  usual: Range | undefined;
  unit: string;
  change: (usual: Range | undefined) => void;
}

/** From where to where something is usual; both ends may stay open. */
export function RangeFields({ usual = {}, unit, change }: RangeFieldsProps) {
  const set = (end: keyof Range, text: string) => {
    const { [end]: _, ...rest } = usual;
    const next: Range = text === '' || !Number.isFinite(Number(text)) ? rest : { ...rest, [end]: Number(text) };
    change(Object.keys(next).length > 0 ? next : undefined);
  };
  const field = (end: keyof Range, name: string) => (
    <label>
      {name} {unit === '' ? '' : `(${unit})`}
      <input
        type="number"
        step="any"
        inputMode="decimal"
        value={usual[end] ?? ''}
        onChange={({ target }) => set(end, target.value)}
      />
    </label>
  );
  return (
    <div className={style.row}>
      {field('from', 'Usual from')}
      {field('to', 'to')}
    </div>
  );
}
