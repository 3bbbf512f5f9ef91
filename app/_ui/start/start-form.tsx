'use client';

import Link from '../frame/link';
import type { DraftGroup, Field } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { FaultSummary } from '../form/fault-summary';
import { FormFields } from '../form/form-fields';
import { useDraft } from '../form/use-draft';
import { siteAddress } from '../frame/site-address';
import style from '../plans/plans.module.css';
import type { KeepAction, PreviewAction, Started } from './answers';
import { StartPreviewView } from './start-preview';
import { useStart } from './use-start';

/** The form that begins a system. */
export interface StartFormData {
  site: { key: string; name: string };
  revision: number;
  fields: Field[];
  draft: DraftGroup;
}

interface StartFormProps {
  form: StartFormData;
  units: Custom;
  preview: PreviewAction;
  keep: KeepAction;
}

/** The questions, then what the review makes of the answers; kept when one says so. What was typed stays. */
export function StartForm({ form, units, preview, keep }: StartFormProps) {
  const { draft, change } = useDraft(form.draft);
  const text = JSON.stringify(draft);
  const { answer, done, seen, isBusy, isLooking, look, keepIt } = useStart(preview, keep, text);
  const faults = answer && !answer.ok ? (answer.reason.faults ?? []) : [];
  const hidden = { site: form.site.key, basedOn: String(form.revision), units, draft: text };
  if (done) return <Kept started={done} />;
  return (
    <form action={look} className={style.form}>
      {answer && !answer.ok ? <FaultSummary said={answer.said} faults={faults} fields={form.fields} /> : null}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <FormFields fields={form.fields} draft={draft} state={{ faults, change }} />
      <p>
        <button type="submit" className={style.first} disabled={isBusy}>
          {isLooking ? 'Computing…' : 'See what the review says'}
        </button>{' '}
        <span className={style.stays}>Nothing is kept by this.</span>
      </p>
      <div role="status">
        {isLooking ? <p>The review is being computed; a large system takes some seconds.</p> : null}
      </div>
      {seen ? (
        <>
          <StartPreviewView preview={seen} units={units} />
          <p>
            <button type="submit" className={style.first} formAction={keepIt} disabled={isBusy}>
              Keep {seen.system.name}
            </button>
          </p>
        </>
      ) : null}
    </form>
  );
}

function Kept({ started: { site, system, name } }: { started: Started }) {
  return (
    <p role="status">
      {name} is described. <Link href={siteAddress(site, 'systems', system)}>Go to its review</Link>
    </p>
  );
}
