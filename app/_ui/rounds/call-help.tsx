'use client';

import { useActionState, useId, useState } from 'react';
import { answerOf, type FormAction, type FormAnswer } from '../form/answer';
import { type Drafting, useDraft } from '../form/half-typed';
import { siteAddress } from '../frame/site-address';
import { NoteField } from './note-field';
import style from './rounds.module.css';

/** What came of calling: who is being told, and the alarm; `told` is null when it waits for a signal. */
export interface CalledView {
  told: string[] | null;
  occurrence?: string;
}

interface CallHelpProps {
  site: string;
  /** The systems that it may be of. */
  systems: readonly { key: string; name: string }[];
  /** The one that it is of, where that is known. */
  system: string | null;
  /** Where it is seen, in words. */
  where?: string;
  round?: string;
  /** Id of the next call, so that one that is sent twice is called once. */
  nextCall: string;
  call: FormAction<CalledView>;
  /** Keeps what is half-typed, where that can be kept for one person. */
  drafting?: Drafting | undefined;
}

/** Calls for help: whoever is on is called as for any other alarm, by a person who saw what no sensor reads. */
export function CallHelp(props: CallHelpProps) {
  const [made, setMade] = useState<{ call: string; answer: CalledView } | null>(null);
  // Not keyed by the id of the next call: that is another each time the page is drawn, and what is typed would be lost.
  if (made === null) return <CallForm {...props} done={(answer, call) => setMade({ call, answer })} />;
  return (
    <div role="status" className={style.form}>
      <p>
        <strong>{calledSaid(made.answer)}</strong>
      </p>
      {made.answer.occurrence === undefined ? null : (
        <p>
          <a className={style.go} href={siteAddress(props.site, 'alarms', made.answer.occurrence)}>
            See how it stands
          </a>
        </p>
      )}
      {made.call === props.nextCall ? null : (
        <button type="button" className={style.plain} onClick={() => setMade(null)}>
          Call for something else
        </button>
      )}
    </div>
  );
}

const NOT_KEPT: Drafting = { before: () => undefined, keep: () => undefined };

function CallForm(props: CallHelpProps & DoneProps) {
  const { site, systems, system, where, round, nextCall, call, done } = props;
  const draft = useDraft(props.drafting ?? NOT_KEPT, '', () => undefined);
  // Drawn once for as long as the form is there, so that sending it again after no answer came calls once.
  const [id] = useState(nextCall);
  const [answer, run, isBusy] = useActionState<FormAnswer<CalledView> | null, FormData>(async (_before, form) => {
    const answered = await answerOf(call, form);
    if (answered.ok) {
      draft.done();
      done(answered.value, id);
    }
    return answered;
  }, null);
  const hidden = { site, call: id, ...(where && { where }), ...(round && { round }) };
  return (
    <form
      ref={draft.form}
      action={run}
      onReset={(event) => event.preventDefault()}
      className={style.form}
      aria-label={where === undefined ? 'Call for help' : `Call for help: ${where}`}
    >
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <p className={style.soft}>
        Whoever is on is called now, as for any other alarm. Is anybody in danger? Leave, and ring the emergency
        services first.
      </p>
      <Words systems={systems} system={system} />
      <button type="submit" className={style.main} disabled={isBusy}>
        Call for help
      </button>
      <p role="status" className={style.status}>
        {isBusy ? 'Calling…' : null}
        {answer && !answer.ok ? <NotCalled answer={answer} /> : null}
      </p>
    </form>
  );
}

interface DoneProps {
  done: (answer: CalledView, call: string) => void;
}

function Words({ systems, system }: Pick<CallHelpProps, 'systems' | 'system'>) {
  const [what, of] = [useId(), useId()];
  return (
    <>
      {system === null ? (
        <label htmlFor={of}>
          Of which system
          <select id={of} name="system" required>
            {systems.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : (
        <input type="hidden" name="system" value={system} />
      )}
      <label htmlFor={what}>
        What is wrong, in a few words
        <input id={what} name="what" type="text" maxLength={120} autoComplete="off" required />
      </label>
      <NoteField name="saw" title="What was seen and done (may stay empty)" />
    </>
  );
}

function NotCalled({ answer }: { answer: Extract<FormAnswer<CalledView>, { ok: false }> }) {
  return (
    <>
      <strong>Nobody has been called.</strong>{' '}
      {(answer.reason.faults ?? []).map(({ message }) => `It ${message}.`).join(' ') || answer.said} If it cannot wait,
      go to a telephone.
    </>
  );
}

function calledSaid({ told }: CalledView): string {
  if (told === null) return 'It is kept here. Nobody is called before there is a signal: go to a telephone.';
  if (told.length === 0) return 'It is an alarm now, and nobody could be told: go to a telephone.';
  return `It is an alarm now. Being told: ${told.join(', ')}.`;
}
