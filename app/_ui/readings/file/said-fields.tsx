import { useId } from 'react';
import type { DateOrder, LayoutDraft } from '#core/readings/file/layout';
import type { Question } from '#core/readings/file/questions';
import { ChoiceField } from './choice-field';
import type { LookView } from './look-view';
import { zoneOptions } from './zone-options';
import style from './file.module.css';

/** What a part of the form shows and changes. */
export interface PartProps {
  seen: LookView;
  draft: LayoutDraft;
  change: (draft: LayoutDraft) => void;
  asked: readonly Question[];
}

const ORDER_NAMES: Record<DateOrder, string> = {
  ymd: 'year, month, day',
  dmy: 'day, month, year',
  mdy: 'month, day, year',
};

/** What a file seldom says of its times and numbers. */
export function SaidFields({ seen, draft, change, asked }: PartProps) {
  const askedOf = (field: string) => asked.find((one) => one.field === field)?.says;
  const { time } = draft;
  return (
    <fieldset className={style.group}>
      <legend>Times and numbers</legend>
      {seen.needsZone ? (
        <ChoiceField
          label="Its clock ran by"
          value={draft.zone ?? ''}
          options={[...(draft.zone === null ? [['', 'choose…'] as const] : []), ...zoneOptions(seen.zone, draft.zone)]}
          asked={askedOf('zone')}
          about="A logger that is never set to summer time keeps the same difference from UTC all year."
          choose={(zone) => change({ ...draft, zone })}
        />
      ) : (
        <p className={style.hint}>Its times say by themselves which moment is meant.</p>
      )}
      {time.as === 'text' && seen.orders.length !== 1 ? (
        <ChoiceField
          label="Its dates are written"
          value={time.order ?? ''}
          options={[
            ...(time.order === null ? [['', 'choose…'] as const] : []),
            ...seen.orders.map((order) => [order, ORDER_NAMES[order]] as const),
          ]}
          asked={askedOf('time.order')}
          choose={(order) => change({ ...draft, time: { ...time, order: order as DateOrder } })}
        />
      ) : null}
      <MidnightField draft={draft} change={change} asked={askedOf('midnight')} />
      <ChoiceField
        label="Before the decimals stands"
        value={draft.decimal}
        options={[
          ['.', 'a point'],
          [',', 'a comma'],
        ]}
        choose={(decimal) => change({ ...draft, decimal: decimal as '.' | ',' })}
      />
      <MissingField draft={draft} change={change} />
    </fieldset>
  );
}

function MidnightField({ draft, change, asked }: Pick<PartProps, 'draft' | 'change'> & { asked: string | undefined }) {
  return (
    <ChoiceField
      label="00:00 says"
      value={draft.midnight ?? ''}
      options={[
        ...(draft.midnight === null ? [['', 'choose…'] as const] : []),
        ['real', 'that it was midnight'],
        ['unknown', 'that nobody wrote down the time: suspect, and stored at the beginning of the day'],
      ]}
      asked={asked}
      choose={(midnight) => change({ ...draft, midnight: midnight as 'real' | 'unknown' })}
    />
  );
}

function MissingField({ draft, change }: Pick<PartProps, 'draft' | 'change'>) {
  const id = useId();
  return (
    <div className={style.field}>
      <label htmlFor={id}>Words that stand where there is no reading, with commas between them</label>
      <input
        id={id}
        type="text"
        defaultValue={draft.missing.join(', ')}
        onChange={(event) =>
          change({
            ...draft,
            missing: event.target.value
              .split(',')
              .map((word) => word.trim())
              .filter((word) => word !== ''),
          })
        }
      />
      <p className={style.hint}>Such as NA or -999. An empty cell is never a reading.</p>
    </div>
  );
}
