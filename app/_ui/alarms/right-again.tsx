'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { KeptForm } from '../safeguards/kept-form';
import type { AlarmView } from './alarm-view';

interface RightAgainProps {
  site: string;
  alarm: AlarmView;
  rightAgain: FormAction<unknown>;
}

/** Ends an alarm that somebody raised by hand: no reading tells that it is right again, so a person says it. */
export function RightAgain({ site, alarm, rightAgain }: RightAgainProps) {
  const id = useId();
  if (alarm.caller === null || alarm.returnedAt !== null) return null;
  return (
    <Section
      id="right-again"
      title="It is right again"
      note="Said by whoever has looked at it themselves. Until then it stays open, and calls again after it was acknowledged."
    >
      <KeptForm
        action={rightAgain}
        hidden={{ site, occurrence: alarm.id }}
        labels={{ note: 'What was done' }}
        button="It is right again"
        done="It is over."
      >
        <label htmlFor={id}>
          What was done
          <textarea id={id} name="note" rows={2} maxLength={2000} required />
        </label>
      </KeptForm>
    </Section>
  );
}
