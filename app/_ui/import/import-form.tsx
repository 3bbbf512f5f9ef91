'use client';

import { useActionState, useRef, useState } from 'react';
import type { Done, FileAction, FileAnswer, Preview } from './answers';
import { DifferenceList } from './difference-list';
import { DoneNote } from './done-note';
import { FaultTable } from './fault-table';
import { FileField } from './file-field';
import style from './import.module.css';

/** An action as a form's state wants it. */
function fresh<T>(action: FileAction<T>) {
  return (_before: FileAnswer<T> | null, form: FormData): Promise<FileAnswer<T> | null> => action(null, form);
}

/** Paste or choose a facility file, look at what it would change, then import it. The text stays whatever happens. */
export function ImportForm({ preview, keep }: { preview: FileAction<Preview>; keep: FileAction<Done> }) {
  const [text, setText] = useState('');
  const [checked, setChecked] = useState<string | null>(null);
  const [seen, look, isLooking] = useActionState(fresh(preview), null);
  const [done, importIt, isImporting] = useActionState(fresh(keep), null);
  const [latest, setLatest] = useState<'look' | 'import'>('look');
  const area = useRef<HTMLTextAreaElement>(null);
  const answer = latest === 'look' ? seen : done;
  const isBusy = isLooking || isImporting;
  const isFresh = checked === text && !isBusy;
  const goTo = (line: number) => {
    const from =
      text
        .split('\n')
        .slice(0, line - 1)
        .join('\n').length + (line > 1 ? 1 : 0);
    area.current?.focus();
    area.current?.setSelectionRange(from, from + (text.split('\n')[line - 1]?.length ?? 0));
  };
  return (
    <form
      action={(form) => {
        setChecked(text);
        setLatest('look');
        look(form);
      }}
    >
      <FileField text={text} change={setText} area={area} />
      <div className={style.buttons}>
        <button type="submit" className={style.first} disabled={isBusy || text.trim() === ''}>
          {isLooking ? 'Checking…' : 'Check the file'}
        </button>
        <span className={style.hint}>Nothing is kept until you import it.</span>
      </div>
      <div role="status" className={style.answer}>
        {isFresh && answer && !answer.ok ? (
          <FaultTable said={answer.said} faults={answer.reason.faults ?? []} goTo={goTo} />
        ) : null}
        {isFresh && latest === 'look' && seen?.ok ? <DifferenceList preview={seen.value} /> : null}
        {isFresh && latest === 'import' && done?.ok ? <DoneNote done={done.value} /> : null}
        {checked !== null && checked !== text && !isBusy ? <p>The text has changed since: check it again.</p> : null}
      </div>
      {isFresh && latest === 'look' && seen?.ok ? (
        <div className={style.buttons}>
          <input type="hidden" name="basedOn" value={seen.value.basedOn} />
          <button
            type="submit"
            className={style.first}
            formAction={(form) => {
              setLatest('import');
              importIt(form);
            }}
          >
            Import {seen.value.site.name}
          </button>
        </div>
      ) : null}
    </form>
  );
}
