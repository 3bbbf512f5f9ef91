'use client';

import type { FormAction } from '../form/answer';
import { DayField, LineField, TextField } from './fields';
import { KeptForm } from './kept-form';
import type { SafeguardView } from './safeguard-view';
import style from './safeguards.module.css';
import suggested from './suggested.json';

const LABELS = {
  on: 'Day of the test',
  result: 'What came of it',
  steps: 'What was done',
  expected: 'What should have happened',
  seen: 'What was seen',
  looked: 'Who looked',
};

/** Records a test of a safeguard. It starts with the words of the last test, or with what is usual for its kind. */
export function TestForm({ page, record }: { page: SafeguardView; record: FormAction<unknown> }) {
  const { place, today, self, nextEntry, line, ledger } = page;
  const before = ledger.find(({ withdrawn }) => withdrawn === null);
  const usual = suggested.kinds[line.kind];
  return (
    <>
      <ul className={style.cautions}>
        {suggested.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {before?.steps ? null : <p className={style.small}>{suggested.source}</p>}
      <KeptForm
        action={record}
        hidden={{ ...place }}
        ids={{ entry: nextEntry }}
        labels={LABELS}
        button="Record the test"
        done="The test is recorded. The reviews that lean on it are being computed again."
      >
        <DayField name="on" title={LABELS.on} start={today} last={today} />
        <TextField name="steps" title={LABELS.steps} start={before?.steps ?? usual.steps} rows={4} />
        <TextField name="expected" title={LABELS.expected} start={before?.expected ?? usual.expected} />
        <TextField name="seen" title={LABELS.seen} />
        <Worked />
        <LineField name="looked" title={LABELS.looked} start={self ?? ''} />
      </KeptForm>
    </>
  );
}

function Worked() {
  return (
    <fieldset className={style.choice}>
      <legend>{LABELS.result}</legend>
      <label>
        <input type="radio" name="result" value="worked" required /> it worked
      </label>
      <label>
        <input type="radio" name="result" value="failed" required /> it failed
      </label>
    </fieldset>
  );
}
