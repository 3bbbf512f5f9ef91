'use client';

import { useId } from 'react';
import type { AlarmView } from './alarm-view';
import style from './alarms.module.css';

interface AcknowledgeFieldsProps {
  site: string;
  alarm: AlarmView;
  page: 'list' | 'alarm';
  isBusy: boolean;
  /** What is folded under it and still to be acknowledged. */
  folded: readonly FoldedTime[];
}

/** A time that an alarm was raised, as a page showed it. */
export type FoldedTime = Pick<AlarmView, 'id' | 'again'>;

/** Those of a list that can be acknowledged with their first cause. */
export function toAcknowledge<T extends FoldedTime & Pick<AlarmView, 'state'>>(under: readonly T[]): T[] {
  return under.filter(({ state }) => UNSEEN.has(state));
}

const UNSEEN: ReadonlySet<AlarmView['state']> = new Set(['unacknowledged', 'latched-unacknowledged', 'returned']);

/** What a form needs to acknowledge the very time an alarm was raised that is shown beside it. */
export function AcknowledgeFields({ site, alarm, page, isBusy, folded }: AcknowledgeFieldsProps) {
  const id = useId();
  return (
    <>
      <input type="hidden" name="site" value={site} />
      <input type="hidden" name="occurrence" value={alarm.id} />
      <input type="hidden" name="again" value={alarm.again} />
      <input type="hidden" name="page" value={page} />
      <label htmlFor={id}>
        Note (may be left empty)
        <input id={id} type="text" name="note" maxLength={2000} autoComplete="off" />
      </label>
      <button type="submit" disabled={isBusy}>
        Acknowledge<span className={style.unseen}> {alarm.name}</span>
      </button>
      {folded.length === 0 ? null : (
        <button
          type="submit"
          name="folded"
          value={folded.map(({ id: time, again }) => `${time}:${again}`).join(' ')}
          disabled={isBusy}
        >
          Acknowledge it and {folded.length === 1 ? 'the one' : `the ${folded.length}`} folded under it
        </button>
      )}
    </>
  );
}
