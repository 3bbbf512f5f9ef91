import Link from '../frame/link';
import type { FormAnswer } from '../form/answer';
import { instantSaid } from '../words/instant';
import { alarmAddress } from './alarm-view';
import style from './alarms.module.css';

/** What came of acknowledging. */
export interface AcknowledgedView {
  site: string;
  occurrence: string;
  name: string;
  kind: 'first' | 'again' | 'second' | 'called-anew' | 'suppressed';
  first: { by: string; at: string } | null;
  newer: string | null;
  folded: { acknowledged: number; left: number } | null;
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
      {value.folded === null ? null : ` ${foldedSaid(value.folded)}`}
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
  if (kind === 'called-anew')
    return `“${name}” is not acknowledged: it has called again since this page was drawn. Look at it now, and acknowledge it then.`;
  if (kind === 'suppressed' || first === null)
    return `“${name}” is not acknowledged: it calls nobody just now, since it is shelved, suppressed by design or out of service, or was when it ended.`;
  if (kind === 'first') return `You acknowledged “${name}”.`;
  if (kind === 'second')
    return `“${name}” was acknowledged by ${first.by} at ${instantSaid(first.at, zone)}; yours is kept as second.`;
  return `You had acknowledged “${name}” already.`;
}

function foldedSaid({ acknowledged, left }: NonNullable<AcknowledgedView['folded']>): string {
  const rest = left === 0 ? '' : `; ${left} not, since they have called again or call nobody: look at them`;
  return `Of those folded under it, ${acknowledged} acknowledged${rest}.`;
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
