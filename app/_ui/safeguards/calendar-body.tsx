import Link from '../frame/link';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { type LineView, SAFEGUARD_WORDS, safeguardAddress } from './safeguard-view';
import style from './safeguards.module.css';
import { dueSaid, lastSaid, Standing } from './standing';

interface CalendarProps {
  site: { key: string; name: string };
  /** ISO date at the site. */
  today: string;
  lines: LineView[];
}

/** Every safeguard of a site, what has to be tested first at the top. */
export function CalendarBody({ site, today, lines }: CalendarProps) {
  return (
    <Page
      title="Safeguards"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <p>
          {counted(lines)} A safeguard that has not shown within its interval that it works counts as absent in the
          column “as tested”.
        </p>
      }
    >
      {lines.length === 0 ? (
        <p>No safeguard is described.</p>
      ) : (
        <Ledger
          caption={`As of ${today}. What has to be tested first comes first.`}
          columns={columnsFor(site.key, today)}
          rows={lines}
          keyOf={({ system, key }) => `${system?.key ?? '-'}/${key}`}
        />
      )}
    </Page>
  );
}

function counted(lines: LineView[]): string {
  const count = (state: LineView['state']) => lines.filter((line) => line.state === state).length;
  return `Tested: ${count('tested')}. Untested: ${count('untested')}. Off: ${count('off')}.`;
}

function columnsFor(site: string, today: string): Column<LineView>[] {
  return [
    {
      id: 'name',
      head: 'Safeguard',
      cell: (line) => (
        <>
          <Link href={safeguardAddress(site, line)}>{line.name}</Link>
          <span className={style.about}>
            {SAFEGUARD_WORDS[line.kind]}, {line.system?.name ?? 'the site'}
          </span>
        </>
      ),
    },
    { id: 'state', head: 'State', cell: (line) => <Standing line={line} /> },
    { id: 'last', head: 'Last test', cell: lastSaid },
    { id: 'due', head: 'Due', cell: (line) => dueSaid(line, today) },
  ];
}
