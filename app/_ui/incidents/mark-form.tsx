'use client';

import { Fragment, useState } from 'react';
import { MARKS, type MarkName } from '#core/incidents/incident';
import type { Mark } from '#core/incidents/marks';
import { MARK_WORDS, SOURCE_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { EntryForm } from './entry-form';
import { ChoiceField, MomentField, OptionalLine } from './fields';
import type { HeadView } from './incident-view';
import style from './incidents.module.css';
import { localMinute } from './when';

const LABELS = {
  mark: 'Mark',
  at: 'When, at the earliest',
  latest: 'At the latest',
  source: 'How it is known',
  note: 'From what',
};

interface MarkFormProps {
  head: HeadView;
  marks: readonly Mark[];
  ids: Readonly<Record<string, string>>;
  investigate: FormAction<unknown>;
}

/** Sets a mark, or takes over what the record proposes. The one set last counts; those before stay in the log. */
export function MarkForm({ head, marks, ids, investigate }: MarkFormProps) {
  const first = MARKS.find((name) => !marks.some(({ mark, entered }) => mark === name && entered)) ?? 'fault-began';
  const [chosen, setChosen] = useState<MarkName>(first);
  const known = marks.find(({ mark }) => mark === chosen);
  const { zone } = head.site;
  return (
    <div className={style.form}>
      <EntryForm
        action={investigate}
        head={head}
        id={ids.mark}
        hidden={{ kind: 'mark' }}
        labels={LABELS}
        button="Set the mark"
        done="The mark is set."
      >
        <label htmlFor="mark-name">
          {LABELS.mark}
          <select
            id="mark-name"
            name="mark"
            value={chosen}
            onChange={(event) => setChosen(event.currentTarget.value as MarkName)}
          >
            {MARKS.map((name) => (
              <option key={name} value={name}>
                {MARK_WORDS[name]}
              </option>
            ))}
          </select>
        </label>
        <Fragment key={chosen}>
          <MomentField
            name="at"
            title={chosen === 'fault-began' ? LABELS.at : 'When'}
            start={known ? localMinute(known.atMs, zone) : undefined}
          />
          {chosen === 'fault-began' ? <MomentField name="latest" title={LABELS.latest} /> : null}
          <ChoiceField name="source" title={LABELS.source} start={known?.source ?? 'witness'} options={SOURCE_WORDS} />
          <OptionalLine name="note" title={LABELS.note} start={known?.from ?? ''} />
        </Fragment>
      </EntryForm>
    </div>
  );
}
