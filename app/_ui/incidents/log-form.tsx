'use client';

import { SOURCE_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import { ChoiceField, MomentField } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';

const LABELS = { text: 'What happened', at: 'When', source: 'How it is known', reason: 'Why it is corrected' };

interface LogFormProps {
  head: HeadView;
  /** Id of the entry that is written. */
  id: string | undefined;
  log: FormAction<unknown>;
  /** The entry it takes the place of. */
  corrects?: { id: string; text: string; source: string; at: string };
}

/** Writes a line of the log, or one in the place of another. */
export function LogForm({ head, id, log, corrects }: LogFormProps) {
  const hidden = { kind: 'log', ...(corrects ? { supersedes: corrects.id } : {}) };
  return (
    <div className={style.form}>
      <EntryForm
        action={log}
        head={head}
        id={id}
        hidden={hidden}
        labels={LABELS}
        button={corrects ? 'Correct this entry' : 'Write in the log'}
        done={corrects ? 'It is corrected.' : 'It is written.'}
      >
        <TextField name="text" title={LABELS.text} start={corrects?.text} />
        <MomentField name="at" title={LABELS.at} start={corrects?.at} hint={corrects ? undefined : 'Empty: now.'} />
        <ChoiceField name="source" title={LABELS.source} start={corrects?.source ?? 'witness'} options={SOURCE_WORDS} />
        {corrects ? <TextField name="reason" title={LABELS.reason} rows={2} /> : null}
      </EntryForm>
    </div>
  );
}
