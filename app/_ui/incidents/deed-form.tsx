'use client';

import { Fragment } from 'react';
import { DEED_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { KeptForm } from '../safeguards/kept-form';
import { ChoiceField } from './fields';
import { type HeadView, placeOf } from './incident-view';
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
      <KeptForm
        action={investigate}
        hidden={{ ...placeOf(head, ids[id]), kind: 'safeguard', safeguard: id }}
        labels={LABELS}
        button="Keep what it did"
        done="It is kept."
      >
        <Fragment key={ids[id]}>
          <ChoiceField name="did" title={LABELS.did} start={start} options={DEED_WORDS} />
          <TextField name="evidence" title={LABELS.evidence} start={found?.evidence} rows={2} />
        </Fragment>
      </KeptForm>
    </div>
  );
}
