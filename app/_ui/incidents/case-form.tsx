'use client';

import type { FormAction } from '../form/answer';
import { EntryForm } from './entry-form';
import { ChoiceField } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';
import type { ChoiceView } from './investigation-view';

interface CaseFormProps {
  head: HeadView;
  id: string | undefined;
  choice: ChoiceView;
  investigate: FormAction<unknown>;
}

/** Chooses the fault case of the review that an incident is held against. */
export function CaseForm({ head, id, choice: { cases, compared }, investigate }: CaseFormProps) {
  const options = Object.fromEntries(cases.map((one) => [one.id, one.title]));
  return (
    <div className={style.form}>
      <EntryForm
        action={investigate}
        head={head}
        id={id}
        hidden={{ kind: 'summary', part: 'case' }}
        labels={{ text: 'Fault case' }}
        button="Hold it against this case"
        done="It is chosen."
      >
        <ChoiceField name="text" title="Fault case" start={compared?.id} options={options} />
      </EntryForm>
    </div>
  );
}
