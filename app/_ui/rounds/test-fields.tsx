'use client';

import type { TestCheck } from '#core/rounds/check';
import { NoteField } from './note-field';
import style from './rounds.module.css';

/** The test of a safeguard: what was done and expected, offered as the last time, and what was seen. */
export function TestFields({ check, isBusy }: { check: TestCheck; isBusy: boolean }) {
  const { last, everyDays } = check;
  return (
    <>
      <p className={style.soft}>
        To be tested every {everyDays} days.{' '}
        {last ? `Last test ${last.on}: it ${last.result}.` : 'It was never tested.'}
      </p>
      <NoteField name="steps" title="What was done" start={last?.steps} isNeeded />
      <NoteField name="expected" title="What should have happened" start={last?.expected} isNeeded />
      <NoteField name="found" title="What was seen" isNeeded />
      <div className={style.buttons}>
        <button type="submit" name="seen" value="worked" className={style.main} disabled={isBusy}>
          It worked
        </button>
        <button type="submit" name="seen" value="failed" disabled={isBusy}>
          It failed
        </button>
      </div>
    </>
  );
}
