import Link from '../frame/link';
import { Page } from '../frame/page';
import type { FormAction } from '../form/answer';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { ChainStands, type Verdict } from './chain-stands';
import { EntryDetail } from './entry-detail';
import { RecordFilter } from './record-filter';
import { askingFor, type EntryView, type RecordView } from './record-view';
import style from './record.module.css';

/** The record of a site, newest first. @param verify works every seal out again, for those who may */
export function RecordBody({ page, verify }: { page: RecordView; verify: FormAction<Verdict> }) {
  const { site, entries, asked, olderBefore, head, mayVerify } = page;
  const { before: _, times: __, ...part } = asked;
  const at = siteAddress(site.key);
  return (
    <Page
      title="Record"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
      ]}
      lead={<p>What was done at {site.name}, when and by whom. It is added to and never changed.</p>}
    >
      <ChainStands site={site.key} head={head} verify={mayVerify ? verify : null} />
      <RecordFilter page={page} />
      {entries.length === 0 ? (
        <p>No entry answers to this filter.</p>
      ) : (
        <Ledger
          caption={`Times are those of ${site.zone}${asked.times === 'utc' ? ', with UTC below' : ''}.`}
          columns={columns(page)}
          rows={entries}
          keyOf={({ seq }) => String(seq)}
        />
      )}
      <nav aria-label="Through the record" className={style.through}>
        {asked.before === undefined ? null : (
          <Link href={`${at}/record${askingFor({ ...asked, before: undefined })}`}>Newest</Link>
        )}
        {olderBefore === null ? null : (
          <Link href={`${at}/record${askingFor({ ...asked, before: olderBefore })}`}>Older</Link>
        )}
        <Link href={`${at}/record/anchors`}>Anchors kept elsewhere</Link>
        <a href={`/api/record/${encodeURIComponent(site.key)}${askingFor(part)}`} download>
          All of it as CSV
        </a>
      </nav>
    </Page>
  );
}

function columns({ site, asked }: RecordView): Column<EntryView>[] {
  return [
    {
      id: 'when',
      head: 'When',
      cell: ({ at }) => (
        <time dateTime={at} className={style.when}>
          {instantSaid(at, site.zone)}
          {asked.times === 'utc' ? <span className={style.utc}>{instantSaid(at, 'UTC')} UTC</span> : null}
        </time>
      ),
    },
    { id: 'what', head: 'What', cell: (entry) => <EntryDetail site={site.key} entry={entry} /> },
    { id: 'who', head: 'Who', cell: ({ by }) => by ?? 'nobody' },
    { id: 'number', head: 'No.', figure: true, cell: ({ seq }) => seq },
  ];
}
