'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { siteAddress } from './site-address';
import style from './site-nav.module.css';

/** Pages of a site: the end of their address, their name, and what a person must be allowed to do to be led there. */
const PLACES = [
  { end: '', name: 'Systems', verb: 'see' },
  { end: '/rounds', name: 'Rounds', verb: 'see' },
  { end: '/alarms', name: 'Alarms', verb: 'see' },
  { end: '/rota', name: 'Rota', verb: 'see' },
  { end: '/states', name: 'States', verb: 'see' },
  { end: '/readings', name: 'Readings', verb: 'see' },
  { end: '/incidents', name: 'Incidents', verb: 'read-record' },
  { end: '/safeguards', name: 'Safeguards', verb: 'see' },
  { end: '/plans', name: 'Plans', verb: 'see' },
  { end: '/describe', name: 'Description', verb: 'describe' },
  { end: '/record', name: 'Record', verb: 'read-record' },
  { end: '/people', name: 'People', verb: 'people' },
] as const;

interface SiteNavView {
  key: string;
  name: string;
  allowed: readonly string[];
  /** Alarms that want something. */
  openAlarms: number;
}

/** The site one is at, and its pages with the one being read marked. */
export function SiteNav({ site }: { site: SiteNavView }) {
  const path = usePathname();
  const at = siteAddress(site.key);
  const isAt = (end: string) =>
    end === '' ? path === at || path.startsWith(`${at}/systems/`) : path.startsWith(at + end);
  return (
    <nav aria-label={`Pages of ${site.name}`} className={style.bar}>
      <span className={style.site}>{site.name}</span>
      <ul>
        {PLACES.filter(({ verb }) => site.allowed.includes(verb)).map(({ end, name }) => (
          <li key={end}>
            <Link href={at + end} aria-current={path === at + end ? 'page' : isAt(end) ? 'true' : undefined}>
              {name}
              {end === '/alarms' && site.openAlarms > 0 ? <OpenCount count={site.openAlarms} /> : null}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** How many alarms are open: a number, a shape and a word, which only those hear who do not see the shape. */
function OpenCount({ count }: { count: number }) {
  return (
    <span className={style.open}>
      <span aria-hidden="true">▲</span>
      {count}
      <span className={style.unseen}> open</span>
    </span>
  );
}
