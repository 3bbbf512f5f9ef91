'use client';

import { useActionState } from 'react';
import type { FormAction, FormAnswer } from '../form/answer';
import style from './record.module.css';

/** Whether a record is as it was written, or the first link that is not. */
export type Verdict = { isWhole: true; links: number } | { isWhole: false; seq: number; wrong: string };

interface ChainStandsProps {
  site: string;
  head: { seq: number; seal: string } | null;
  /** Null for those who may not ask. */
  verify: FormAction<Verdict> | null;
}

/** Where the chain of the record stands, and whether it is whole, once somebody asks. */
export function ChainStands({ site, head, verify }: ChainStandsProps) {
  if (!head) return <p>Nothing is recorded yet.</p>;
  return (
    <div className={style.chain}>
      <p>
        {head.seq} {head.seq === 1 ? 'entry' : 'entries'}, each sealed over the one before it. The last seal is{' '}
        <code className={style.seal}>{head.seal}</code>
      </p>
      {verify ? <Verify site={site} verify={verify} /> : null}
    </div>
  );
}

function Verify({ site, verify }: { site: string; verify: FormAction<Verdict> }) {
  const [answer, ask, isBusy] = useActionState(
    (_before: FormAnswer<Verdict> | null, form: FormData): Promise<FormAnswer<Verdict>> => verify(null, form),
    null,
  );
  return (
    <form action={ask} className={style.verify}>
      <input type="hidden" name="site" value={site} />
      <button type="submit" disabled={isBusy}>
        {isBusy ? 'Working out every seal…' : 'Work out every seal again'}
      </button>
      <p role="status">{answer ? said(answer) : ''}</p>
    </form>
  );
}

function said(answer: FormAnswer<Verdict>): string {
  if (!answer.ok) return answer.said;
  const verdict = answer.value;
  return verdict.isWhole
    ? `Whole: all ${verdict.links} seals are as they were written. Only an anchor kept elsewhere shows a record that was rewritten and sealed anew.`
    : `Broken at entry ${verdict.seq}: ${verdict.wrong}.`;
}
