'use client';

import type { Part } from '#core/incidents/incident';
import { PART_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import type { HeadView } from './incident-view';

interface SummaryFormProps {
  head: HeadView;
  id: string | undefined;
  part: Part;
  text: string | undefined;
  investigate: FormAction<unknown>;
}

/** Writes one part of the summary; the one written last stands. */
export function SummaryForm({ head, id, part, text, investigate }: SummaryFormProps) {
  return (
    <EntryForm
      action={investigate}
      head={head}
      id={id}
      hidden={{ kind: 'summary', part }}
      labels={{ text: PART_WORDS[part] }}
      button="Keep this"
      done="It is kept."
    >
      <TextField name="text" title={PART_WORDS[part]} start={text} rows={4} />
    </EntryForm>
  );
}
