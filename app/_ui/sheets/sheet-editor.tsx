'use client';

import { SIGNERS, type RoundSheet, type SheetLine } from '#core/rounds/round-sheet';
import { useActionState, useState } from 'react';
import { answerOf, type FormAction, type FormAnswer } from '../form/answer';
import { AddLine } from './add-line';
import { LineEditor } from './line-editor';
import { faultSaid } from './sheet-faults';
import { QuietSaid } from './quiet-said';
import { ScheduleFields } from './schedule-fields';
import type { SheetView } from './sheet-views';
import { SIGNER_WORDS } from './sheet-words';
import style from './sheets.module.css';

interface SheetEditorProps {
  page: SheetView;
  write: FormAction<unknown>;
}

/** Writes a sheet: what is due when, who signs, and its lines in order. It is sent as a whole; what is refused stays here. */
export function SheetEditor({ page, write }: SheetEditorProps) {
  const [sheet, setSheet] = useState<RoundSheet>(page.sheet);
  const [answer, run, isBusy] = useActionState<FormAnswer<unknown> | null, FormData>(
    async (_before, form) => await answerOf(write, form),
    null,
  );
  const change = (more: Partial<RoundSheet>) => setSheet((before) => ({ ...before, ...more }));
  return (
    <form action={run} onReset={(event) => event.preventDefault()} className={style.editor}>
      <input type="hidden" name="site" value={page.site.key} />
      <input type="hidden" name="body" value={JSON.stringify(sheet)} />
      {page.basedOn === null ? null : <input type="hidden" name="basedOn" value={page.basedOn} />}
      <label>
        Name
        <input value={sheet.name} maxLength={200} required onChange={({ target }) => change({ name: target.value })} />
      </label>
      <ScheduleFields schedule={sheet.schedule} change={(schedule) => change({ schedule })} />
      <SigningFields sheet={sheet} setSheet={setSheet} />
      <LinesEditor page={page} lines={sheet.lines} setLines={(lines) => change({ lines })} />
      <label>
        Why it is changed (may stay empty)
        <textarea name="why" rows={2} maxLength={2000} />
      </label>
      <div className={style.row}>
        <button type="submit" disabled={isBusy}>
          Keep as a draft
        </button>
        <button type="submit" name="put" value="yes" className={style.main} disabled={isBusy}>
          Put into force
        </button>
      </div>
      <div role="status">
        {answer?.ok ? (
          <>
            <p>It is kept. A round that is under way goes on with the sheet it was begun with.</p>
            <QuietSaid page={page} />
          </>
        ) : null}
        {answer && !answer.ok ? <Refused answer={answer} sheet={sheet} /> : null}
      </div>
    </form>
  );
}

function SigningFields({ sheet, setSheet }: { sheet: RoundSheet; setSheet: (sheet: RoundSheet) => void }) {
  const { graceMin, signedBy, secondSignature, ...rest } = sheet;
  const kept = { ...(graceMin !== undefined && { graceMin }), ...(signedBy && { signedBy }) };
  const second = secondSignature ? { secondSignature } : {};
  const setGrace = (text: string) => {
    const { graceMin: _, ...others } = kept;
    const typed = Number(text);
    setSheet({ ...rest, ...others, ...second, ...(text !== '' && Number.isFinite(typed) && { graceMin: typed }) });
  };
  const setSigner = (name: string) => {
    const { signedBy: _, ...others } = kept;
    const signer = SIGNERS.find((one) => one === name);
    setSheet({ ...rest, ...others, ...second, ...(signer && { signedBy: signer }) });
  };
  return (
    <fieldset>
      <legend>Waiting and signing</legend>
      <label>
        Late after so many minutes (left empty: by how often it comes round)
        <input
          type="number"
          min={0}
          step={1}
          inputMode="numeric"
          value={graceMin ?? ''}
          onChange={({ target }) => setGrace(target.value)}
        />
      </label>
      <label>
        Signed by at least
        <select value={signedBy ?? ''} onChange={({ target }) => setSigner(target.value)}>
          <option value="">whoever walked it</option>
          {SIGNERS.map((one) => (
            <option key={one} value={one}>
              {SIGNER_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <label className={style.tick}>
        <input
          type="checkbox"
          checked={secondSignature ?? false}
          onChange={({ target }) => setSheet({ ...rest, ...kept, ...(target.checked && { secondSignature: true }) })}
        />
        Somebody else signs it as well
      </label>
    </fieldset>
  );
}

interface LinesEditorProps {
  page: SheetView;
  lines: SheetLine[];
  setLines: (lines: SheetLine[]) => void;
}

function LinesEditor({ page, lines, setLines }: LinesEditorProps) {
  const move = (from: number, by: number) => {
    const moved = [...lines];
    const [line] = moved.splice(from, 1);
    if (line) moved.splice(from + by, 0, line);
    setLines(moved);
  };
  return (
    <fieldset>
      <legend>Lines</legend>
      <p>In this order at each place; places are walked clean before dirty.</p>
      <ol className={style.lines}>
        {lines.map((line, index) => (
          <LineEditor
            key={line.key}
            page={page}
            line={line}
            change={(next) => setLines(lines.map((one, at) => (at === index ? next : one)))}
            leaveOut={() => setLines(lines.filter((_, at) => at !== index))}
            up={index === 0 ? null : () => move(index, -1)}
            down={index === lines.length - 1 ? null : () => move(index, 1)}
          />
        ))}
      </ol>
      <AddLine page={page} lines={lines} add={(added) => setLines([...lines, ...added])} />
    </fieldset>
  );
}

function Refused({ answer, sheet }: { answer: Extract<FormAnswer<unknown>, { ok: false }>; sheet: RoundSheet }) {
  return (
    <>
      <p>
        <strong>Not kept.</strong> {answer.said}
      </p>
      <ul>
        {(answer.reason.faults ?? []).map((fault) => (
          <li key={`${fault.path} ${fault.message}`}>{faultSaid(fault, sheet)}</li>
        ))}
      </ul>
    </>
  );
}
