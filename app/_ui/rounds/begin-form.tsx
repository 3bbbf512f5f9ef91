'use client';

import { useRouter } from 'next/navigation';
import { useActionState } from 'react';
import { answerOf, type FormAnswer } from '../form/answer';
import { roundsAddress } from './round-view';
import type { BeginAction } from './rounds-body';
import style from './rounds.module.css';

interface BeginFormProps {
  action: BeginAction;
  fields: Record<string, string>;
  name: string;
}

/** Begins a round and leads to it. */
export function BeginForm({ action, fields, name }: BeginFormProps) {
  const { answer, run, isBusy } = useBegin(action);
  return (
    <form action={run}>
      {Object.entries(fields).map(([field, value]) => (
        <input key={field} type="hidden" name={field} value={value} />
      ))}
      <button type="submit" className={style.main} disabled={isBusy}>
        Begin {name}
      </button>
      <div role="status">{answer && !answer.ok ? <p>{answer.said}</p> : null}</div>
    </form>
  );
}

/** Begins a round by a form and leads to it once it is there. */
export function useBegin(action: BeginAction) {
  const router = useRouter();
  const [answer, run, isBusy] = useActionState<FormAnswer<{ site: string; round: string }> | null, FormData>(
    async (_before, form) => {
      const answered = await answerOf(action, form);
      if (answered.ok) router.push(roundsAddress(answered.value.site, answered.value.round, 1));
      return answered;
    },
    null,
  );
  return { answer, run, isBusy };
}
