import Link from '../frame/link';
import type { Column } from '#core/plans/credit';
import { siteAddress } from '../frame/site-address';
import { VerdictMark } from '../marks/verdict';
import type { SystemRow } from './system-row';
import style from './systems-table.module.css';

/** Address of a system's page. */
function addressOf({ site, system }: SystemRow): string {
  return siteAddress(site, 'systems', system);
}

/** The worst fault case in words, leading to its page. */
export function CaseCell({ row }: { row: SystemRow }) {
  if (!row.review)
    return (
      <span className={style.quiet}>
        {row.missing === 'broken' ? 'computing its review broke; the reason is in the log' : 'review under way'}
      </span>
    );
  const { title, harm, case: id } = row.review.worst;
  return (
    <>
      {id ? <Link href={`${addressOf(row)}/cases/${encodeURIComponent(id)}`}>{title}</Link> : title}
      {harm ? <span className={style.under}>{harm}</span> : null}
      {row.review.isOld ? (
        <span className={style.under}>as before the last change; a new review is under way</span>
      ) : null}
    </>
  );
}

/** The gravest verdict in a column. */
export function VerdictCell({ row, column }: { row: SystemRow; column: Column }) {
  if (!row.review) return null;
  const { verdict, befalls } = row.review[column];
  return <VerdictMark verdict={verdict} of={befalls} unsure={column === 'claimed' && row.review.unsure} />;
}

/** Findings by grade. */
export function FindingsCell({ row }: { row: SystemRow }) {
  if (!row.review) return null;
  const { high, medium, low } = row.review.findings;
  return (
    <span className={style.grades}>
      <span className={high > 0 ? style.high : style.quiet}>{high} high</span>
      <span className={medium > 0 ? undefined : style.quiet}>{medium} medium</span>
      <span className={style.quiet}>{low} low</span>
    </span>
  );
}
