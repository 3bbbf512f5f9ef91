'use client';

import Link from '../frame/link';
import { useState } from 'react';
import type { DraftGroup, Field } from '#core/forms/field';
import { answerOf, type FormAction, type FormAnswer } from '../form/answer';
import { FaultSummary } from '../form/fault-summary';
import { FormFields } from '../form/form-fields';
import { useDraft } from '../form/use-draft';
import { siteAddress } from '../frame/site-address';
import style from './describe.module.css';

interface NewSiteFormProps {
  fields: readonly Field[];
  shown: DraftGroup;
  units: 'metric' | 'us';
  begin: FormAction<{ key: string; name: string }>;
}

/** The first few things of a new site. */
export function NewSiteForm({ fields, shown, units, begin }: NewSiteFormProps) {
  const { draft, change } = useDraft(shown);
  const [answer, setAnswer] = useState<FormAnswer<{ key: string; name: string }> | null>(null);
  const [isBusy, setBusy] = useState(false);
  const send = async () => {
    setBusy(true);
    const form = new FormData();
    form.set('draft', JSON.stringify(draft));
    form.set('units', units);
    setAnswer(await answerOf(begin, form));
    setBusy(false);
  };
  if (answer?.ok) {
    const { key, name } = answer.value;
    return (
      <div role="status">
        <h2>{name} is begun</h2>
        <p>
          Next: <Link href={siteAddress(key, 'systems', 'new')}>begin a system by eight questions</Link>, or{' '}
          <Link href={siteAddress(key, 'describe')}>describe piece by piece what stands there</Link>: circuits, rota,
          rounds.
        </p>
      </div>
    );
  }
  const faults = answer?.reason.faults ?? [];
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {answer ? <FaultSummary said={answer.said} faults={faults} fields={fields} /> : null}
      <FormFields fields={fields} draft={draft} state={{ faults, change }} />
      <p className={style.buttons}>
        <button type="submit" className={style.first} disabled={isBusy}>
          {isBusy ? 'Beginning…' : 'Begin the site'}
        </button>
      </p>
    </form>
  );
}
