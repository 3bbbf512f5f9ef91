'use client';

import { useId } from 'react';
import type { AlarmView } from './alarm-view';
import style from './alarms.module.css';
import type { FoldedTime } from './to-acknowledge';

interface AcknowledgeFieldsProps {
  site: string;
  alarm: AlarmView;
  page: 'list' | 'alarm';
  isBusy: boolean;
  /** What is folded under it and still to be acknowledged. */
  folded: readonly FoldedTime[];
}

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
