'use client';

import type { Standing } from '#core/incidents/story';
import { CAUSE_WORDS, STRENGTH_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { DayField, LineField, TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import { ChoiceField, OptionalLine } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';

interface FormProps {
  head: HeadView;
  ids: Readonly<Record<string, string>>;
  investigate: FormAction<unknown>;
}

const LABELS = {
  text: 'What is to be done',
  owner: 'Owner, by role',
  due: 'Due',
  strength: 'Strength',
  cause: 'Cause it answers',
  why: 'For a reminder: why nothing stronger can be done',
};

/** Adds an action, with its owner, its day, and how strong it is. */
export function ActionForm({ head, ids, investigate, causes }: FormProps & { causes: readonly Standing<'cause'>[] }) {
  const choice = causes.map(({ id, body }) => [id, `${CAUSE_WORDS[body.cause]}: ${body.text.slice(0, 80)}`]);
  return (
    <div className={style.form}>
      <h3>Add an action</h3>
      <EntryForm
        action={investigate}
        head={head}
        id={ids.action}
        hidden={{ kind: 'action' }}
        labels={LABELS}
        button="Add the action"
        done="The action is added."
      >
        <TextField name="text" title={LABELS.text} />
        <LineField name="owner" title={LABELS.owner} />
        <DayField name="due" title={LABELS.due} first={head.today} />
        <ChoiceField name="strength" title={LABELS.strength} options={STRENGTH_WORDS} />
        {choice.length > 0 ? (
          <ChoiceField
            name="cause"
            title={LABELS.cause}
            options={{ '': 'none of those above', ...Object.fromEntries(choice) }}
          />
        ) : null}
        <OptionalLine name="why" title={LABELS.why} />
      </EntryForm>
    </div>
  );
}

/** Says that an action is done, and what proves it. */
export function DoneForm({ head, ids, investigate, action }: FormProps & { action: string }) {
  return (
    <div className={style.form}>
      <EntryForm
        action={investigate}
        head={head}
        id={ids[action]}
        hidden={{ kind: 'action-done', action }}
        labels={{ proof: 'What proves it' }}
        button="It is done"
        done="Kept as done."
      >
        <TextField name="proof" title="What proves it" rows={2} />
      </EntryForm>
    </div>
  );
}
