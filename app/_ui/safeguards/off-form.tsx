'use client';

import type { FormAction } from '../form/answer';
import { DayField, LineField, TextField } from './fields';
import { KeptForm } from './kept-form';
import type { SafeguardView } from './safeguard-view';

const LABELS = { owner: 'Who puts it back', why: 'Why', since: 'First day off', until: 'Last day off' };

interface OffFormProps {
  page: SafeguardView;
  off: FormAction<unknown>;
  back: FormAction<unknown>;
}

/** Takes a safeguard out of service, with an end; or puts it back before that end. */
export function OffForm({ page: { place, today, self, line }, off, back }: OffFormProps) {
  const isTaken = line.off !== null && line.off !== undefined && line.off.until >= today;
  if (isTaken)
    return <KeptForm key="back" action={back} hidden={{ ...place }} button="Put it back now" done="It is back." />;
  return (
    <KeptForm
      key="off"
      action={off}
      hidden={{ ...place }}
      labels={LABELS}
      button="Take it out of service"
      done="It is off."
    >
      <LineField name="owner" title={LABELS.owner} start={self ?? ''} />
      <TextField name="why" title={LABELS.why} rows={2} />
      <DayField name="since" title={LABELS.since} start={today} />
      <DayField name="until" title={LABELS.until} first={today} />
    </KeptForm>
  );
}
