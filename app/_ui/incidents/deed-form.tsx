'use client';

import { DEED_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import { ChoiceField } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';
import type { DeedView } from './investigation-view';

const LABELS = { did: 'What it did', evidence: 'Evidence: how that is known' };

interface DeedFormProps {
  head: HeadView;
  ids: Readonly<Record<string, string>>;
  investigate: FormAction<unknown>;
  deed: DeedView;
}

/** Says what a safeguard did. It starts with how it stood when the fault began. */
export function DeedForm({ head, ids, investigate, deed }: DeedFormProps) {
  const { id, state, found } = deed;
  const start = found?.did ?? (state === 'tested' ? 'worked' : state);
  return (
    <div className={style.form}>
      <EntryForm
        action={investigate}
        head={head}
        id={ids[id]}
        hidden={{ kind: 'safeguard', safeguard: id }}
        labels={LABELS}
        button="Keep what it did"
        done="It is kept."
      >
        <ChoiceField name="did" title={LABELS.did} start={start} options={DEED_WORDS} />
        <TextField name="evidence" title={LABELS.evidence} start={found?.evidence} rows={2} />
      </EntryForm>
    </div>
  );
}
