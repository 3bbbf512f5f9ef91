'use client';

import type { Custom } from '#core/units/shown';
import { useActionState, useState } from 'react';
import { answerOf, type FormAnswer } from '../form/answer';
import { type Drafting, useDraft } from '../form/half-typed';
import { tabDrafting } from '../form/tab-draft';
import { LineFields, type Mode } from './line-fields';
import { NoteField } from './note-field';
import type { EnterAction } from './place-body';
import type { LineView } from './round-view';
import style from './rounds.module.css';

interface LineFormProps {
  site: string;
  round: string;
  line: LineView;
  units: Custom;
  enter: EnterAction;
  /** The entry that is corrected by it. */
  corrects?: string;
  /** Who types. */
  who: string;
  /** Keeps what is half-typed; for as long as the tab is open where left out. */
  drafting?: Drafting | undefined;
}

type Answer = FormAnswer<{ asked: string | null }>;

/** Reads what was seen on one line. What was typed stays until it is kept; what is asked first is asked beside it. */
export function LineForm({ site, round, line, units, enter, corrects, who, drafting }: LineFormProps) {
  const [mode, setMode] = useState<Mode>('look');
  const own = tabDrafting(who, site, round, line.check.key, corrects ?? '');
  const { form, done } = useDraft(drafting ?? own, mode, (kept) => setMode(modeOf(kept)));
  // Drawn once for as long as the form is there, so that sending it again after no answer came stores it once.
  const [entry] = useState(line.nextEntry);
  const [answer, run, isBusy] = useActionState<Answer | null, FormData>(async (_before, typed) => {
    const answered = await answerOf(enter, typed);
    if (answered.ok && answered.value.asked === null) done();
    return answered;
  }, null);
  const asked = answer?.ok ? answer.value.asked : null;
  const hidden = { site, round, check: line.check.key, entry, units, ...(corrects && { supersedes: corrects }) };
  return (
    <form
      ref={form}
      action={run}
      onReset={(event) => event.preventDefault()}
      className={style.form}
      aria-label={line.check.what}
    >
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {corrects ? <NoteField name="reason" title="Why it is corrected" isNeeded /> : null}
      <LineFields check={line.check} units={units} mode={mode} setMode={setMode} isBusy={isBusy} />
      {asked ? <Asked question={asked} isBusy={isBusy} /> : null}
      <p role="status" className={style.status}>
        {isBusy ? 'Saving…' : answer && !answer.ok ? <NotSaved answer={answer} /> : null}
      </p>
    </form>
  );
}

function modeOf(kept: string): Mode {
  return kept === 'other' || kept === 'not-done' ? kept : 'look';
}

function Asked({ question, isBusy }: { question: string; isBusy: boolean }) {
  return (
    <div role="alert" className={style.asked}>
      <p>
        <strong>Not saved yet.</strong> {question}
      </p>
      <NoteField name="note" title="What was seen and done (may stay empty)" />
      <button type="submit" name="sure" value="yes" className={style.main} disabled={isBusy}>
        Yes, save it so
      </button>
    </div>
  );
}

function NotSaved({ answer }: { answer: Extract<Answer, { ok: false }> }) {
  return (
    <>
      <strong>Not saved.</strong>{' '}
      {(answer.reason.faults ?? []).map(({ message }) => `It ${message}.`).join(' ') || answer.said}
    </>
  );
}
