import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import { spareSaid } from '../words/said';
import type { SystemRow } from './system-row';
import style from './systems-table.module.css';

/** What stands open at a system: alarms, rounds, states; then its safeguards and how long ago it was read. */
export function NowCell({ row }: { row: SystemRow }) {
  const { open, nothing, safeguards, reading } = row.now;
  return (
    <span className={style.now}>
      {open.length === 0 ? <span className={style.quiet}>{nothing}</span> : null}
      {open.map(({ says, isAbnormal, on }) => (
        <span key={says} className={isAbnormal ? style.high : undefined}>
          {isAbnormal ? <Mark /> : null}
          {on ? <Link href={siteAddress(row.site, on, ...(on === 'states' ? [row.system] : []))}>{says}</Link> : says}
        </span>
      ))}
      <span className={style.under}>
        {reading.isAbnormal ? <Mark /> : null}
        {reading.says}
      </span>
      <span className={style.under}>{safeguards}</span>
    </span>
  );
}

/** Time to spare from now to the morning, and at the worst hour of the week. */
export function SpareCell({ row }: { row: SystemRow }) {
  const { tonight } = row.now;
  if (!row.review) return null;
  return (
    <>
      <span className={tonight.isShort ? style.high : undefined}>
        {tonight.isShort ? <Mark /> : null}
        tonight: {tonight.says}
      </span>
      {row.review.spareS === undefined ? null : (
        <span className={style.under}>worst hour: {spareSaid(row.review.spareS)}</span>
      )}
    </>
  );
}

/** The system's name, leading to its page, with its kind below, and its site where there are several. */
export function SystemCell({ row }: { row: SystemRow }) {
  return (
    <>
      <Link href={siteAddress(row.site, 'systems', row.system)}>{row.name}</Link>
      <span className={style.under}>{row.about}</span>
    </>
  );
}

function Mark() {
  return (
    <span aria-hidden="true" className={style.mark}>
      ▲{' '}
    </span>
  );
}
