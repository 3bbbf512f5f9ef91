import Link from '../frame/link';
import { STATE_WORDS } from '#core/incidents/words';
import type { IncidentState } from '#core/incidents/state';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { LiveRefresh } from '../live/live-refresh';
import { type Column, Ledger } from '../table/ledger';
import { incidentAddress, type SiteView } from './incident-view';
import style from './incidents.module.css';
import { When } from './when';

/** One incident of the list. */
export interface LineView {
  number: number;
  title: string;
  system: { key: string; name: string } | null;
  openedMs: number;
  beganMs: number | null;
  state: IncidentState;
  openActions: number;
  lateActions: number;
}

interface IncidentsProps {
  site: SiteView;
  lines: LineView[];
  mayOpen: boolean;
}

/** The incidents of a site, the newest first. */
export function IncidentsBody({ site, lines, mayOpen }: IncidentsProps) {
  const at = siteAddress(site.key);
  return (
    <Page
      title="Incidents"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
      ]}
      lead={<p>What went wrong at {site.name}, or might have. A near miss belongs here too.</p>}
    >
      {mayOpen ? (
        <p>
          <Link href={`${at}/incidents/new`} className={style.press}>
            Open an incident
          </Link>
        </p>
      ) : null}
      {lines.length === 0 ? (
        <p>No incident has been opened.</p>
      ) : (
        <Ledger
          caption={`Times are those of ${site.zone}.`}
          columns={columnsFor(site)}
          rows={lines}
          keyOf={({ number }) => String(number)}
        />
      )}
      <LiveRefresh site={site.key} what={['incidents']} />
    </Page>
  );
}

function columnsFor(site: SiteView): Column<LineView>[] {
  return [
    {
      id: 'number',
      head: 'Incident',
      cell: ({ number, title }) => (
        <Link href={incidentAddress({ site, number })}>
          {number}. {title}
        </Link>
      ),
    },
    {
      id: 'when',
      head: 'Began',
      cell: ({ beganMs, openedMs }) =>
        beganMs === null ? (
          <>
            opened <When atMs={openedMs} zone={site.zone} />
          </>
        ) : (
          <When atMs={beganMs} zone={site.zone} />
        ),
    },
    { id: 'system', head: 'System', cell: ({ system }) => system?.name ?? 'the whole site' },
    { id: 'state', head: 'State', cell: ({ state }) => STATE_WORDS[state] },
    {
      id: 'actions',
      head: 'Open actions',
      figure: true,
      cell: ({ openActions, lateActions }) => (
        <>
          {openActions}
          {lateActions > 0 ? (
            <>
              {', '}
              <span aria-hidden="true" className={style.mark}>
                ▲
              </span>{' '}
              <strong>{lateActions} late</strong>
            </>
          ) : null}
        </>
      ),
    },
  ];
}
