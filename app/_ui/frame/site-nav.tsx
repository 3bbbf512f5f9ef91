'use client';

import Link from './link';
import { usePathname } from 'next/navigation';
import { siteAddress } from './site-address';
import style from './site-nav.module.css';

/** A page of a site: the end of its address, its name, and what a person must be allowed to do to be led there. */
interface SitePlace {
  end: string;
  name: string;
  verb: string;
}

/** What is opened on every round. */
const DAILY: readonly SitePlace[] = [
  { end: '', name: 'Systems', verb: 'see' },
  { end: '/rounds', name: 'Rounds', verb: 'see' },
  { end: '/alarms', name: 'Alarms', verb: 'see' },
  { end: '/states', name: 'States', verb: 'see' },
];
/** What is opened now and then: behind a fold where there is no room for all of them. */
const FURTHER: readonly SitePlace[] = [
  { end: '/handover', name: 'Handover', verb: 'see' },
  { end: '/rota', name: 'Rota', verb: 'see' },
  { end: '/readings', name: 'Readings', verb: 'see' },
  { end: '/incidents', name: 'Incidents', verb: 'read-record' },
  { end: '/safeguards', name: 'Safeguards', verb: 'see' },
  { end: '/plans', name: 'Plans', verb: 'see' },
  { end: '/describe', name: 'Description', verb: 'describe' },
  { end: '/record', name: 'Record', verb: 'read-record' },
  { end: '/people', name: 'People', verb: 'people' },
];

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
  const allowed = (places: readonly SitePlace[]) => places.filter(({ verb }) => site.allowed.includes(verb));
  const entries = (places: readonly SitePlace[]) =>
    places.map((place) => <Entry key={place.end} place={place} at={at} path={path} openAlarms={site.openAlarms} />);
  const further = allowed(FURTHER);
  const read = further.find(({ end }) => isAt(path, at, end));
  return (
    <nav aria-label={`Pages of ${site.name}`} className={style.bar}>
      <span className={style.site}>{site.name}</span>
      <ul>{entries(allowed(DAILY))}</ul>
      {/* Folded again on the page it led to. */}
      <details key={path} className={style.further}>
        <summary>
          More
          {read ? <b className={style.read}> {read.name}</b> : null}
        </summary>
        <ul>{entries(further)}</ul>
      </details>
    </nav>
  );
}

function isAt(path: string, at: string, end: string): boolean {
  return end === '' ? path === at || path.startsWith(`${at}/systems/`) : path.startsWith(at + end);
}

interface EntryProps {
  place: SitePlace;
  at: string;
  path: string;
  openAlarms: number;
}

function Entry({ place: { end, name }, at, path, openAlarms }: EntryProps) {
  return (
    <li>
      <Link href={at + end} aria-current={path === at + end ? 'page' : isAt(path, at, end) ? 'true' : undefined}>
        {name}
        {end === '/alarms' && openAlarms > 0 ? <OpenCount count={openAlarms} /> : null}
      </Link>
    </li>
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
