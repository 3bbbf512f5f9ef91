'use client';

import { useId } from 'react';
import { EnterSaves } from '../form/enter-saves';
import style from './rounds.module.css';

/** Reasons that are often so. */
const QUICK = ['No time', 'Could not get at it', 'Instrument missing or faulty', 'Out of use at the moment'];

/** Why a line was not looked at: one of a few reasons at a press, or another in words. */
export function NotDone({
  isBusy,
  back,
  title = 'Not done, because',
}: {
  isBusy: boolean;
  back: () => void;
  title?: string;
}) {
  const id = useId();
  return (
    <fieldset className={style.reasons}>
      <legend>{title}</legend>
      <EnterSaves />
      <div className={style.buttons}>
        {QUICK.map((reason) => (
          <button key={reason} type="submit" name="notDone" value={reason} disabled={isBusy} formNoValidate>
            {reason}
          </button>
        ))}
      </div>
      <label htmlFor={id}>
        Another reason
        <input id={id} type="text" maxLength={500} name="notDone" required />
      </label>
      <div className={style.buttons}>
        <button type="submit" className={style.main} disabled={isBusy}>
          Save as not done
        </button>
        <button type="button" onClick={back}>
          Back
        </button>
      </div>
    </fieldset>
  );
}
