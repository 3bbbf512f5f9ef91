'use client';

import { useRef, useState } from 'react';
import type { Done, FileAction, Preview } from './answers';
import { DifferenceList } from './difference-list';
import { DoneNote } from './done-note';
import { FaultTable } from './fault-table';
import { FileField } from './file-field';
import { useImport } from './use-import';
import style from './import.module.css';

/** Paste or choose a facility file, look at what it would change, then import it. The text stays whatever happens. */
export function ImportForm({ preview, keep }: { preview: FileAction<Preview>; keep: FileAction<Done> }) {
  const [text, setText] = useState('');
  const area = useRef<HTMLTextAreaElement>(null);
  const { seen, done, isLooking, isBusy, look, importIt, checked } = useImport(preview, keep);
  const isFresh = checked === text && !isBusy;
  const answer = done ?? seen;
  return (
    <form action={look}>
      <FileField text={text} change={setText} area={area} />
      <div className={style.buttons}>
        <button type="submit" className={style.first} disabled={isBusy || text.trim() === ''}>
          {isLooking ? 'Checking…' : 'Check the file'}
        </button>
        <span className={style.hint}>Nothing is kept until you import it.</span>
      </div>
      <div role="status" className={style.answer}>
        {isFresh && answer && !answer.ok ? (
          <FaultTable
            said={answer.said}
            faults={answer.reason.faults ?? []}
            goTo={(line) => selectLine(area.current, line)}
          />
        ) : null}
        {isFresh && !done && seen?.ok ? <DifferenceList preview={seen.value} /> : null}
        {isFresh && done?.ok ? <DoneNote done={done.value} /> : null}
        {checked !== null && checked !== text && !isBusy ? <p>The text has changed since: check it again.</p> : null}
      </div>
      {isFresh && !done && seen?.ok ? (
        <div className={style.buttons}>
          <input type="hidden" name="basedOn" value={seen.value.basedOn} />
          <button type="submit" className={style.first} formAction={importIt}>
            Import {seen.value.site.name}
          </button>
        </div>
      ) : null}
    </form>
  );
}

/** Put the cursor on a line of the text, counted from 1. */
function selectLine(area: HTMLTextAreaElement | null, line: number): void {
  if (!area) return;
  const lines = area.value.split('\n');
  const from = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  area.focus();
  area.setSelectionRange(from, from + (lines[line - 1]?.length ?? 0));
}
