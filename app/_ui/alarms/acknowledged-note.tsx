import Link from 'next/link';
import type { FormAnswer } from '../form/answer';
import { instantSaid } from '../words/instant';
import { alarmAddress } from './alarm-view';
import style from './alarms.module.css';

/** What came of acknowledging. */
export interface AcknowledgedView {
  site: string;
  occurrence: string;
  name: string;
  kind: 'first' | 'again' | 'second';
  first: { by: string; at: string };
  newer: string | null;
}

interface AcknowledgedNoteProps {
  answer: FormAnswer<AcknowledgedView> | null;
  /** IANA zone of the site. */
  zone: string;
}

/** Says how acknowledging went: who was first, and that an alarm raised since is not meant by it. */
export function AcknowledgedNote({ answer, zone }: AcknowledgedNoteProps) {
  return (
    <div role="status" className={style.answer}>
      {answer === null ? null : answer.ok ? <Done value={answer.value} zone={zone} /> : <Refused answer={answer} />}
    </div>
  );
}

function Done({ value, zone }: { value: AcknowledgedView; zone: string }) {
  return (
    <p>
      {doneSaid(value, zone)}
      {value.newer === null ? null : (
        <>
          {' '}
          <strong>It was raised again since, which this says nothing of:</strong>{' '}
          <Link href={alarmAddress(value.site, value.newer)}>look at the newer alarm</Link>.
        </>
      )}
    </p>
  );
}

function doneSaid({ kind, name, first }: AcknowledgedView, zone: string): string {
  const when = instantSaid(first.at, zone);
  if (kind === 'first') return `You acknowledged “${name}”.`;
  if (kind === 'second') return `“${name}” was acknowledged by ${first.by} at ${when}; yours is kept as second.`;
  return `You had acknowledged “${name}” already.`;
}

function Refused({ answer: { said, faults } }: { answer: Extract<FormAnswer<unknown>, { ok: false }> }) {
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
