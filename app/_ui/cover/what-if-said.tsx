import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import type { CoverChange } from '#core/review/people/compare-cover';
import type { WhatIfSaid } from '#core/review/people/site-cover';
import { caseAddress } from '../document/parts/tell-case';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { VerdictMark } from '../marks/verdict';
import { type Column, Ledger } from '../table/ledger';
import { Spare } from './spare';

/** Rows that are shown at once; the others are folded. */
const SHOWN = 10;

interface WhatIfSaidProps {
  site: string;
  facility: Facility;
  said: WhatIfSaid;
}

/** What a change of people would make of the fault cases: those that are won, and those that are lost. */
export function WhatIfAnswer({ site, facility, said: { won, lost } }: WhatIfSaidProps) {
  if (won.length + lost.length === 0)
    return (
      <p role="status">
        <strong>It changes no verdict, and no hour of any fault case.</strong> Times to spare may be others: the broken
        lines below show them.
      </p>
    );
  return (
    <>
      <p role="status">
        <strong>
          {won.length} fault {won.length === 1 ? 'case' : 'cases'} better, {lost.length} worse.
        </strong>{' '}
        Nothing is kept until somebody changes the rota.
      </p>
      <Changes site={site} facility={facility} caption="Better with the change" rows={won} />
      <Changes site={site} facility={facility} caption="Worse with the change" rows={lost} />
    </>
  );
}

function Changes({
  site,
  facility,
  caption,
  rows,
}: {
  site: string;
  facility: Facility;
  caption: string;
  rows: CoverChange[];
}) {
  if (rows.length === 0) return null;
  const table = (part: CoverChange[]) => (
    <Ledger
      caption={caption}
      columns={columnsOf(site, facility)}
      rows={part}
      keyOf={(row) => `${row.system} ${row.case.id}`}
    />
  );
  return (
    <>
      {table(rows.slice(0, SHOWN))}
      {rows.length > SHOWN ? <Fold title={`${rows.length - SHOWN} more`}>{table(rows.slice(SHOWN))}</Fold> : null}
    </>
  );
}

function columnsOf(site: string, { systems }: Facility): Column<CoverChange>[] {
  return [
    {
      id: 'case',
      head: 'Fault case',
      cell: (row) => (
        <Link href={caseAddress(siteAddress(site, 'systems', row.system), row.case.id)}>{row.case.title}</Link>
      ),
    },
    { id: 'system', head: 'System', cell: (row) => systems.find(({ key }) => key === row.system)?.name ?? row.system },
    { id: 'from', head: 'Now', cell: ({ from }) => <VerdictMark verdict={from} /> },
    { id: 'to', head: 'Then', cell: ({ to }) => <VerdictMark verdict={to} /> },
    { id: 'hours', head: 'Hours of the week in time', figure: true, cell: ({ hours }) => signed(hours) },
    { id: 'fromS', head: 'Worst hour now', cell: ({ fromS }) => <Spare spareS={fromS} /> },
    { id: 'toS', head: 'Then', cell: ({ toS }) => <Spare spareS={toS} /> },
  ];
}

function signed(hours: number): string {
  return hours > 0 ? `+${hours}` : String(hours).replace('-', '−');
}
