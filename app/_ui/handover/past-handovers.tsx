import Link from '../frame/link';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import type { HandoverLineView, SiteOfHandover } from './handover-view';

/** The handovers of the past days, the newest first. */
export function PastHandovers({ site, past }: { site: SiteOfHandover; past: HandoverLineView[] }) {
  if (past.length === 0) return null;
  return (
    <Section id="past" title="Handed over before" wide>
      <Ledger caption="The newest first." columns={columns(site)} rows={past} keyOf={({ id }) => id} />
    </Section>
  );
}

function columns(site: SiteOfHandover): Column<HandoverLineView>[] {
  return [
    {
      id: 'at',
      head: 'When',
      cell: ({ id, at }) => <Link href={siteAddress(site.key, 'handover', id)}>{momentSaid(at, site.zone)}</Link>,
    },
    { id: 'by', head: 'By', cell: ({ by }) => by },
    {
      id: 'taken',
      head: 'Taken',
      cell: ({ taken }) => (taken ? `${momentSaid(taken.at, site.zone)} by ${taken.by}` : 'not yet'),
    },
    { id: 'note', head: 'Said', cell: ({ note, taken }) => [note, taken?.note].filter(Boolean).join(' · ') || '–' },
  ];
}
