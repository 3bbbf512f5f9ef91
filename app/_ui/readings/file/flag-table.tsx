import { useId } from 'react';
import { FLAG_MEANINGS, type FlagMeaning } from '#core/readings/file/layout';
import { type Column, Ledger } from '../../table/ledger';
import { ChoiceField } from './choice-field';
import type { PartProps } from './said-fields';
import style from './file.module.css';

const MEANINGS: Record<FlagMeaning, string> = {
  good: 'good',
  suspect: 'suspect',
  bad: 'bad',
  below: 'below detection: the number is the limit',
};

/** What each flag of a file says; nothing where no column has flags. */
export function FlagTable({ seen, draft, change, asked }: PartProps) {
  const places = new Set(draft.columns.flatMap(({ sensor, flag }) => (sensor === null || flag === null ? [] : [flag])));
  const flagged = seen.columns.filter(({ place }) => places.has(place));
  const words = [...new Set(flagged.filter(({ isScale }) => !isScale).flatMap(({ examples }) => examples))];
  const hasScale = flagged.some(({ isScale }) => isScale);
  const columns: Column<string>[] = [
    { id: 'flag', head: 'Flag', cell: (flag) => <code>{flag}</code> },
    {
      id: 'says',
      head: 'Says that the value is',
      cell: (flag) => (
        <ChoiceField
          hidden
          label={`What the flag ${flag} says`}
          value={draft.flags[flag] ?? 'suspect'}
          options={FLAG_MEANINGS.map((meaning) => [meaning, MEANINGS[meaning]] as const)}
          choose={(meaning) => change({ ...draft, flags: { ...draft.flags, [flag]: meaning as FlagMeaning } })}
        />
      ),
    },
  ];
  return (
    <>
      {words.length > 0 ? (
        <Ledger
          caption="Flags. One that is not here makes its value suspect; every flag is kept beside its value."
          columns={columns}
          rows={words}
          keyOf={(flag) => flag}
        />
      ) : null}
      {hasScale ? <ScaleField draft={draft} change={change} asked={asked} /> : null}
    </>
  );
}

function ScaleField({ draft, change, asked }: Omit<PartProps, 'seen'>) {
  const id = useId();
  const says = asked.find(({ field }) => field === 'goodFrom')?.says;
  return (
    <div className={style.field} data-wrong={says ? '' : undefined}>
      <label htmlFor={id}>Its flags are numbers. Good from</label>
      <input
        id={id}
        type="number"
        step="any"
        defaultValue={draft.goodFrom ?? ''}
        onChange={(event) =>
          change({ ...draft, goodFrom: event.target.value === '' ? null : Number(event.target.value) })
        }
      />
      {says ? <p className={style.asked}>{says}</p> : null}
    </div>
  );
}
