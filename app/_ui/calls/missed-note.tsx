import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import style from './calls.module.css';
import type { CallsView } from './calls-view';

/** Who missed their test call, and whether one waits for the person who looks; nothing when there is nothing to say. */
export function MissedNote({ calls: { site, people, ownTest } }: { calls: CallsView }) {
  const missed = people.filter(({ state }) => state === 'missed').map(({ name }) => name);
  if (missed.length === 0 && ownTest === null) return null;
  const page = <Link href={siteAddress(site.key, 'alarms', 'calls')}>How people are called</Link>;
  return (
    <p>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      {ownTest === null ? null : <strong>A test call to you waits for your answer. </strong>}
      {missed.length === 0 ? null : <strong>Missed the last test call: {missed.join(', ')}. </strong>}
      {page}
    </p>
  );
}
