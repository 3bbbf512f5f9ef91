'use client';

import { useActionState, useId } from 'react';
import type { PlanAction, PlanActions, PlanAnswer } from './answers';
import style from './plans.module.css';
import type { CanDo } from './waiting-version';

/** An action as a form's state wants it. */
function fresh(action: PlanAction) {
  return (_before: PlanAnswer | null, form: FormData): Promise<PlanAnswer> => action(null, form);
}

interface ActionsProps {
  /** Where the version stands, and what the person looked at. */
  fields: Record<string, string>;
  can: CanDo;
  actions: PlanActions;
}

/** What can be done with a version that waits, each with what it needs to be told. */
export function VersionActions({ fields, can, actions }: ActionsProps) {
  return (
    <div className={style.actions}>
      {can.waits ? <p>It waits for somebody else who may put it into force.</p> : null}
      {can.submit ? <Deed fields={fields} action={actions.submit} name="Submit" first /> : null}
      {can.putInForce ? (
        <Deed
          fields={fields}
          action={actions.putInForce}
          name="Put into force"
          first
          ask={
            can.onOwnWord
              ? { name: 'why', label: 'You wrote it, and nobody else here may do this. Why can it not wait?' }
              : undefined
          }
        />
      ) : null}
      {can.sendBack ? (
        <Deed
          fields={fields}
          action={actions.sendBack}
          name="Send back"
          ask={{ name: 'reason', label: 'Why it goes back' }}
        />
      ) : null}
      {can.withdraw ? (
        <Deed
          fields={fields}
          action={actions.withdraw}
          name="Withdraw"
          ask={{ name: 'reason', label: 'Why it is withdrawn' }}
        />
      ) : null}
    </div>
  );
}

interface DeedProps {
  fields: Record<string, string>;
  action: PlanAction;
  name: string;
  first?: boolean;
  /** What has to be said with it. */
  ask?: { name: string; label: string };
}

function Deed({ fields, action, name, first = false, ask }: DeedProps) {
  const [answer, send, isBusy] = useActionState(fresh(action), null);
  const id = useId();
  return (
    <form action={send} onReset={(event) => event.preventDefault()} className={style.deed}>
      {Object.entries(fields).map(([field, value]) => (
        <input key={field} type="hidden" name={field} value={value} />
      ))}
      {ask ? (
        <p className={style.asked}>
          <label htmlFor={id}>{ask.label}</label>
          <input id={id} name={ask.name} required maxLength={2000} autoComplete="off" />
        </p>
      ) : null}
      <button type="submit" className={first ? style.first : style.second} disabled={isBusy}>
        {isBusy ? 'One moment…' : name}
      </button>
      <div role="status">{answer && !answer.ok ? <Refused said={answer.said} faults={answer.faults} /> : null}</div>
    </form>
  );
}

function Refused({ said, faults }: { said: string; faults: string[] }) {
  return (
    <div className={style.refused}>
      <p>{said}</p>
      {faults.length > 0 ? (
        <ul>
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
