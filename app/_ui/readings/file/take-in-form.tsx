'use client';

import { type ReactNode, useId, useState } from 'react';
import type { FormAction, FormAnswer } from '../../form/answer';
import { instantSaid } from '../../words/instant';
import { ColumnTable } from './column-table';
import { FlagTable } from './flag-table';
import type { LookView, TakenView } from './look-view';
import { OutcomeNote } from './outcome-note';
import { PreviewTable } from './preview-table';
import { SaidFields } from './said-fields';
import { useTakeIn } from './use-take-in';
import { WrittenFields } from './written-fields';
import style from './file.module.css';

interface TakeInFormProps {
  site: string;
  look: FormAction<LookView>;
  takeIn: FormAction<TakenView>;
}

/** Choose the file of a logger, say what it does not say itself, see how it will be stored, and take it in. */
export function TakeInForm({ site, look, takeIn }: TakeInFormProps) {
  const taking = useTakeIn(site, look, takeIn);
  const { file, seen, draft, taken, isBusy } = taking;
  const field = useId();
  return (
    <div className={style.form}>
      <p className={style.choose}>
        <label htmlFor={field}>File of a logger: a table as text, or JSON; 20 MB at most</label>
        <input id={field} type="file" onChange={(event) => taking.choose(event.target.files?.[0] ?? null)} />
      </p>
      <div role="status">
        {isBusy ? <p>Reading {file?.name}…</p> : null}
        {!isBusy && seen && !seen.ok ? <Refused answer={seen} /> : null}
      </div>
      {seen && !seen.ok && file ? <WrittenFields seen={null} readAs={taking.readAs} isBusy={isBusy} /> : null}
      {seen?.ok && draft ? <Mapping seen={seen.value} taking={{ ...taking, draft }} /> : null}
      <div role="status">
        {taken?.ok ? <OutcomeNote taken={taken.value} /> : null}
        {taken && !taken.ok ? <Refused answer={taken} /> : null}
      </div>
    </div>
  );
}

type Taking = Omit<ReturnType<typeof useTakeIn>, 'draft'> & {
  draft: NonNullable<ReturnType<typeof useTakeIn>['draft']>;
};

function Mapping({ seen, taking }: { seen: LookView; taking: Taking }) {
  const { draft, change, isFresh, isBusy } = taking;
  const shared = { seen, draft, change, asked: isFresh ? seen.questions : [] };
  return (
    <>
      <FirstLook seen={seen} />
      <WrittenFields seen={seen} readAs={taking.readAs} isBusy={isBusy} />
      <SaidFields {...shared} />
      <ColumnTable {...shared} />
      <FlagTable {...shared} />
      <div className={style.buttons}>
        <button type="button" disabled={isBusy || isFresh} onClick={taking.lookAgain}>
          See how it will be stored
        </button>
        <span className={style.hint}>
          {isFresh ? 'What is shown below is as you have said it.' : 'You have changed something: look again.'}
        </span>
      </div>
      <PreviewTable seen={seen} isFresh={isFresh} />
      <TakeIn seen={seen} taking={taking} />
    </>
  );
}

function FirstLook({ seen }: { seen: LookView }) {
  return (
    <>
      <h2>
        {seen.name}: {seen.rows} rows
      </h2>
      {seen.before ? (
        <p>
          This very file was taken in on {instantSaid(seen.before, seen.zone)}. Taking it in again adds nothing twice.
        </p>
      ) : null}
      {seen.from ? <p>It has the same columns as the files of “{seen.from.name}”, and is read as they are.</p> : null}
      {seen.preamble.length > 0 ? (
        <details>
          <summary>What stands above its columns</summary>
          <ul>
            {seen.preamble.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      ) : null}
    </>
  );
}

function TakeIn({ seen, taking }: { seen: LookView; taking: Taking }) {
  const [name, setName] = useState(seen.from?.name ?? '');
  const field = useId();
  const isReady = taking.isFresh && seen.questions.length === 0;
  return (
    <div className={style.last}>
      <p className={style.choose}>
        <label htmlFor={field}>
          Name for files like this one, by which all you have said is found again for the next: the logger and its place
        </label>
        <input id={field} type="text" value={name} maxLength={80} onChange={(event) => setName(event.target.value)} />
      </p>
      <div className={style.buttons}>
        <button
          type="button"
          className={style.first}
          disabled={!isReady || taking.isBusy || name.trim() === '' || taking.taken?.ok === true}
          onClick={() => taking.take(name)}
        >
          Take it in
        </button>
        <span className={style.hint}>{whyNotYet(isReady, name)}</span>
      </div>
    </div>
  );
}

function whyNotYet(isReady: boolean, name: string): string {
  if (!isReady) return 'First say what is asked above, and see how it will be stored.';
  return name.trim() === '' ? 'Give it a name first.' : 'Readings are added; nothing that is stored is changed.';
}

function Refused({ answer: { said, faults } }: { answer: Extract<FormAnswer<unknown>, { ok: false }> }): ReactNode {
  return (
    <>
      <p>
        <strong>{said}</strong>
      </p>
      <ul>
        {faults.map((fault) => (
          <li key={fault}>{fault}</li>
        ))}
      </ul>
    </>
  );
}
