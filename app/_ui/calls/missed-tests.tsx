import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import { instantSaid } from '../words/instant';
import style from './calls.module.css';

/** Somebody who answered none of their last test calls. */
export interface MissedView {
  name: string;
  tests: number;
  /** When the newest of them was made, UTC, ISO. */
  madeAt: string;
}

interface MissedTestsProps {
  /** Key of the site, and its IANA zone. */
  site: { key: string; zone: string };
  missed: readonly MissedView[];
}

/** Who did not answer their last test call: an alarm may not reach them either. Nothing where all did. */
export function MissedTests({ site, missed }: MissedTestsProps) {
  if (missed.length === 0) return null;
  return (
    <p>
      <span aria-hidden="true" className={style.mark}>
        ▲{' '}
      </span>
      <strong>Test calls that nobody answered:</strong>{' '}
      {missed
        .map(({ name, tests, madeAt }) => `${name} (${tests}, the last of ${instantSaid(madeAt, site.zone)})`)
        .join(', ')}
      . An alarm may not reach them either.{' '}
      <Link href={`${siteAddress(site.key)}/alarms/calls`}>How people are called</Link>
    </p>
  );
}
