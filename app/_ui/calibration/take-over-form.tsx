'use client';

import { useId, useState } from 'react';
import type { ChangeActions, ChangeOf } from '../describe/answers';
import { KeptNote } from '../describe/kept-note';
import { SeenChange } from '../describe/seen-change';
import { useChange } from '../describe/use-change';
import { FaultSummary } from '../form/fault-summary';
import describe from '../describe/describe.module.css';
import style from './calibration.module.css';

interface TakeOverFormProps {
  of: ChangeOf;
  /** What is sent besides the reason, so that the same is worked out anew. */
  fields: Readonly<Record<string, string>>;
  actions: ChangeActions;
}

/** Takes over what was found: with a reason, after a look at what it changes in description and reviews. */
export function TakeOverForm({ of, fields, actions }: TakeOverFormProps) {
  const id = useId();
  const [why, setWhy] = useState('');
  const { seen, kept, news, looked, busy, look, keep } = useChange(actions, of, {}, fields);
  if (kept?.ok) return <KeptNote kept={kept.value} of={of} />;
  const refusal = kept && !kept.ok ? kept : seen && !seen.ok ? seen : null;
  const isFresh = looked?.why === why;
  return (
    <form
      noValidate
      className={style.form}
      onSubmit={(event) => {
        event.preventDefault();
        void look({ why });
      }}
    >
      {refusal ? <FaultSummary said={refusal.said} faults={refusal.reason.faults ?? []} fields={[]} /> : null}
      <label htmlFor={id}>Why it is taken over</label>
      <textarea id={id} rows={2} value={why} onChange={({ target }) => setWhy(target.value)} />
      <span className={describe.hint}>It stands in the record for good: name no persons.</span>
      <p className={describe.buttons}>
        <button type="submit" className={describe.first} disabled={busy !== null || why.trim() === ''}>
          {busy === 'looking' ? 'Looking…' : 'See what it changes'}
        </button>
        <span className={describe.hint}>Nothing is kept yet.</span>
      </p>
      {seen?.ok && isFresh ? <SeenChange seen={seen.value} news={news} /> : null}
      {seen?.ok && isFresh && seen.value.groups.length > 0 ? (
        <p className={describe.buttons}>
          <button
            type="button"
            className={describe.first}
            disabled={busy !== null}
            onClick={() => void keep({ why }, seen.value.basedOn)}
          >
            {busy === 'keeping' ? 'Keeping…' : 'Take it over into the description'}
          </button>
        </p>
      ) : null}
    </form>
  );
}
