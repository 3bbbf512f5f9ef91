import Link from '../frame/link';
import type { ReactNode } from 'react';
import { SIGNER_WORDS, STATE_WORDS } from '#core/incidents/words';
import type { Signer } from '#core/incidents/incident';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { type HeadView, incidentAddress } from './incident-view';
import style from './incidents.module.css';
import { When } from './when';

/** Pages of an incident. */
const PAGES = [
  { end: [], id: 'log', name: 'First things and log' },
  { end: ['timeline'], id: 'timeline', name: 'Timeline' },
  { end: ['investigation'], id: 'investigation', name: 'Investigation' },
  { end: ['print'], id: 'print', name: 'Print the report' },
] as const;

interface FrameProps {
  head: HeadView;
  /** Which of its pages this is. */
  page: (typeof PAGES)[number]['id'];
  children: ReactNode;
}

/** What every page of an incident has about it: what it is, how far it is, and the way to its other pages. */
export function IncidentFrame({ head, page, children }: FrameProps) {
  const { site, number, title } = head;
  const at = siteAddress(site.key);
  return (
    <Page
      title={`Incident ${number}: ${title}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/incidents`, name: 'Incidents' },
      ]}
      lead={<Lead head={head} />}
    >
      <nav aria-label="Pages of this incident">
        <ul className={style.pages}>
          {PAGES.map(({ end, id, name }) => (
            <li key={id}>
              <Link href={incidentAddress(head, ...end)} aria-current={id === page ? 'page' : undefined}>
                {name}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      {children}
    </Page>
  );
}

function Lead({ head }: { head: HeadView }) {
  const { site, system, alarm, openedMs, openedBy, state, signatures } = head;
  return (
    <p>
      {system ? <Link href={siteAddress(site.key, 'systems', system.key)}>{system.name}</Link> : 'The whole site'}. It
      is {STATE_WORDS[state]}. Opened <When atMs={openedMs} zone={site.zone} /> by {openedBy.name}
      {alarm ? (
        <>
          {' '}
          from <Link href={siteAddress(site.key, 'alarms', alarm)}>an alarm</Link>
        </>
      ) : null}
      .
      {signatures.map(({ as, who, atMs }) => (
        <span key={as}>
          {' '}
          Signed as {SIGNER_WORDS[as as Signer]} by {who.name}, <When atMs={atMs} zone={site.zone} />.
        </span>
      ))}
    </p>
  );
}
