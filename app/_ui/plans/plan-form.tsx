'use client';

import Link from '../frame/link';
import { useActionState, useId, useState } from 'react';
import type { DraftGroup, Field } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { FaultSummary } from '../form/fault-summary';
import { FormFields } from '../form/form-fields';
import { useDraft } from '../form/use-draft';
import type { PlanAction, PlanAnswer } from './answers';
import { plansAt } from './data';
import style from './plans.module.css';

/** The form for the next version of a plan. */
export interface PlanFormData {
  site: { key: string; name: string };
  system: { key: string; name: string };
  equipment: { key: string; name: string };
  fields: Field[];
  draft: DraftGroup;
  from: number;
  latest: number;
}

/** Writes the next version of a plan, layer by layer in their fixed order. What was typed stays whatever is answered. */
export function PlanFormBody({ form, units, write }: { form: PlanFormData; units: Custom; write: PlanAction }) {
  const { fields, from, latest } = form;
  const { draft, change } = useDraft(form.draft);
  const [answer, send, isBusy] = useActionState(
    (_before: PlanAnswer | null, given: FormData): Promise<PlanAnswer> => write(null, given),
    null,
  );
  const why = useId();
  // Held here: a browser empties what a form holds once its action has answered.
  const [reason, setReason] = useState('');
  const faults = answer && !answer.ok ? (answer.reason.faults ?? []) : [];
  const hidden = {
    site: form.site.key,
    system: form.system.key,
    equipment: form.equipment.key,
    from: String(from),
    latest: String(latest),
    units,
    draft: JSON.stringify(draft),
  };
  if (answer?.ok) return <Written form={form} version={answer.value.version} />;
  return (
    <form action={send} className={style.form}>
      {answer ? <FaultSummary said={answer.said} faults={faults} fields={fields} /> : null}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <FormFields fields={fields} draft={draft} state={{ faults, change }} />
      <p className={style.asked}>
        <label htmlFor={why}>Why it is written</label>
        <input
          id={why}
          name="reason"
          required
          maxLength={2000}
          autoComplete="off"
          className={style.why}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
      </p>
      <p>
        <button type="submit" className={style.first} disabled={isBusy}>
          {isBusy ? 'One moment…' : 'Keep as a draft'}
        </button>{' '}
        <span className={style.stays}>Nothing comes into force by this.</span>
      </p>
    </form>
  );
}

function Written({ form: { site, system, equipment }, version }: { form: PlanFormData; version: number }) {
  return (
    <p role="status">
      Version {version} is kept as a draft.{' '}
      <Link href={`${plansAt(site.key, system.key, equipment.key)}#waiting`}>
        See what the review says to it, and submit it
      </Link>
    </p>
  );
}
