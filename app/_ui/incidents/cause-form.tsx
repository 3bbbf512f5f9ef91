'use client';

import { CAUSE_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import { ChoiceField } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';

const LABELS = { cause: 'Kind of cause', certainty: 'How sure', text: 'What made it possible' };
const CERTAINTIES = { fact: 'shown by evidence', opinion: 'held to be likely' };

interface CauseFormProps {
  head: HeadView;
  ids: Readonly<Record<string, string>>;
  investigate: FormAction<unknown>;
}

/** Adds a cause. It names nobody: behind what somebody did there is what made it likely. */
export function CauseForm({ head, ids, investigate }: CauseFormProps) {
  return (
    <div className={style.form}>
      <EntryForm
        action={investigate}
        head={head}
        id={ids.cause}
        hidden={{ kind: 'cause' }}
        labels={LABELS}
        button="Add the cause"
        done="The cause is added."
      >
        <ChoiceField name="cause" title={LABELS.cause} options={CAUSE_WORDS} />
        <ChoiceField name="certainty" title={LABELS.certainty} options={CERTAINTIES} />
        <TextField name="text" title={LABELS.text} />
      </EntryForm>
    </div>
  );
}
