'use client';

import Link from 'next/link';
import { useActionState, useId, useState } from 'react';
import type { DraftGroup, Field, FieldFault } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { FaultSummary } from '../form/fault-summary';
import { FormFields } from '../form/form-fields';
import { useDraft } from '../form/use-draft';
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

/** What writing a plan answers: the version, or a refusal with every fault by its field. */
type WriteAnswer =
  | { ok: true; value: { version: number; path: string } }
  | { ok: false; said: string; reason: { why: string; faults?: FieldFault[] } };

/** A server action that writes a plan; what it answered before makes no difference to it. */
export type WriteAction = (before: null, form: FormData) => Promise<WriteAnswer>;

/** Writes the next version of a plan, layer by layer in their fixed order. What was typed stays whatever is answered. */
export function PlanFormBody({ form, units, write }: { form: PlanFormData; units: Custom; write: WriteAction }) {
  const { fields, from, latest } = form;
  const { draft, change } = useDraft(form.draft);
  const [answer, send, isBusy] = useActionState(
    (_before: WriteAnswer | null, given: FormData): Promise<WriteAnswer> => write(null, given),
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
  if (answer?.ok) return <Written answer={answer.value} />;
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

function Written({ answer: { version, path } }: { answer: { version: number; path: string } }) {
  return (
    <p role="status">
      Version {version} is kept as a draft.{' '}
      <Link href={`${path}#waiting`}>See what the review says to it, and submit it</Link>
    </p>
  );
}
