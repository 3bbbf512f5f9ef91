import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import style from './site-list.module.css';

/**
 * The sites a person may see, each with the way to its own pages.
 * @param mayBegin whether they may begin another one
 */
export function SiteList({ sites, mayBegin }: { sites: { key: string; name: string }[]; mayBegin: boolean }) {
  return (
    <ul className={style.sites} aria-label="Sites">
      {sites.map(({ key, name }) => (
        <li key={key}>
          <Link href={siteAddress(key)}>{name}</Link>
        </li>
      ))}
      {mayBegin ? (
        <li>
          <Link href="/sites/new">Describe another site</Link>
        </li>
      ) : null}
    </ul>
  );
}
