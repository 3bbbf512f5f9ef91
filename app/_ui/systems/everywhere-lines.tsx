import Link from '../frame/link';
import type { Overdue } from '#core/rounds/standings';
import { siteAddress } from '../frame/site-address';
import { overdueSaid } from './row-now';
import style from './systems-table.module.css';

interface EverywhereLinesProps {
  sites: readonly { key: string; name: string }[];
  overdue: ReadonlyMap<string, Overdue>;
}

/** What is overdue at every system of a site, said once above the table. */
export function EverywhereLines({ sites, overdue }: EverywhereLinesProps) {
  return sites.map(({ key, name }) => {
    const said = overdueSaid(overdue.get(key) ?? { late: 0, missed: 0 });
    if (said.length === 0) return null;
    return (
      <p key={key}>
        <span aria-hidden="true" className={style.mark}>
          ▲
        </span>{' '}
        {sites.length > 1 ? `${name}, at every system: ` : 'At every system: '}
        <Link href={siteAddress(key, 'rounds')}>{said.map(({ says }) => says).join(', ')}</Link>
      </p>
    );
  });
}
