'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import type { AlarmView } from './alarm-view';

/** Resets an alarm that is latched. */
export function ResetForm({ site, alarm, reset }: { site: string; alarm: AlarmView; reset: FormAction<unknown> }) {
  const id = useId();
  return (
    <KeptForm
      action={reset}
      hidden={{ site, occurrence: alarm.id }}
      labels={{ note: 'Note' }}
      button="Reset it"
      done="It is reset."
    >
      <label htmlFor={id}>
        What you saw (may be left empty)
        <textarea id={id} name="note" rows={2} maxLength={2000} />
      </label>
    </KeptForm>
  );
}
