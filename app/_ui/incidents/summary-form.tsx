'use client';

import { Fragment } from 'react';
import type { Part } from '#core/incidents/incident';
import { PART_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { TextField } from '../safeguards/fields';
import { KeptForm } from '../safeguards/kept-form';
import { type HeadView, placeOf } from './incident-view';

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
    <KeptForm
      action={investigate}
      hidden={{ ...placeOf(head, id), kind: 'summary', part }}
      labels={{ text: PART_WORDS[part] }}
      button="Keep this"
      done="It is kept."
    >
      <Fragment key={id}>
        <TextField name="text" title={PART_WORDS[part]} start={text} rows={4} />
      </Fragment>
    </KeptForm>
  );
}
