import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';

/** One daily anchor, and which place it reached when. */
interface AnchorView {
  day: string;
  seq: number;
  sent: { place: string; target: string; sentAt: Date }[];
}

interface AnchorBodyProps {
  site: { key: string; name: string; zone: string };
  kept: {
    places: { place: string; target: string }[];
    anchors: AnchorView[];
    check: { checkedAt: Date; links: number; brokenSeq: number | null; wrong: string | null } | null;
  };
}

const PLACE_WORDS: Record<string, string> = { file: 'file', mail: 'mail to', webhook: 'call to' };

/** Where the record of a site is anchored: what vouches for it from outside. */
export function AnchorBody({ site, kept: { places, anchors, check } }: AnchorBodyProps) {
  const at = siteAddress(site.key);
  return (
    <Page
      title="Anchors kept elsewhere"
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/record`, name: 'Record' },
      ]}
      lead={
        <p>
          An anchor says which entry the record had reached and how it was sealed. Kept where whoever runs the database
          cannot write, it shows a record that was rewritten and sealed anew, or cut short.
        </p>
      }
    >
      <Checked check={check} zone={site.zone} />
      <p>
        {places.length === 0
          ? 'No anchor goes outside: whoever runs this Holdfast has named no file, mail address or server for them. Until then nothing tells a record that was rewritten as a whole.'
          : `They go each day to ${places.map(placeSaid).join(', ')}.`}
      </p>
      {anchors.length === 0 ? (
        <p>There is none yet: the first is made within the hour.</p>
      ) : (
        <Ledger
          caption={`The latest first. Days are those of UTC, times those of ${site.zone}.`}
          columns={columnsFor(site.zone)}
          rows={anchors}
          keyOf={({ day }) => day}
        />
      )}
    </Page>
  );
}

function Checked({ check, zone }: Pick<AnchorBodyProps['kept'], 'check'> & { zone: string }) {
  if (!check) return <p>The record has not been gone through by itself yet.</p>;
  const when = instantSaid(check.checkedAt.toISOString(), zone);
  if (check.brokenSeq === null)
    return (
      <p>
        Gone through {when}: whole, {check.links} entries.
      </p>
    );
  return (
    <p>
      <strong>
        Broken at entry {check.brokenSeq}: {check.wrong}.
      </strong>{' '}
      Found {when}. It gets no further anchor until that is cleared up.
    </p>
  );
}

function placeSaid({ place, target }: { place: string; target: string }): string {
  return `${PLACE_WORDS[place] ?? place} ${target}`;
}

function columnsFor(zone: string): Column<AnchorView>[] {
  return [
    { id: 'day', head: 'Day', cell: ({ day }) => day },
    { id: 'seq', head: 'Last entry', figure: true, cell: ({ seq }) => seq },
    {
      id: 'sent',
      head: 'Reached',
      cell: ({ sent }) =>
        sent.length === 0
          ? 'no place outside'
          : sent.map((one) => `${placeSaid(one)}, ${instantSaid(one.sentAt.toISOString(), zone)}`).join('; '),
    },
  ];
}
