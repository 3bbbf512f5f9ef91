import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import type { AlikeStretches } from '#core/review/people/alike';
import { caseAddress } from '../document/parts/tell-case';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { hoursSaid, partsSaid, whoSaid } from './said';
import { Spare } from './spare';
import style from './cover.module.css';

interface WeakTableProps {
  site: string;
  facility: Facility;
  rows: AlikeStretches[];
  caption: string;
  /** Left out where every row is of one system. */
  withSystem?: boolean;
}

/** Hours of the week with what is least to spare in them, the fault case, and who would come. */
export function WeakTable({ site, facility, rows, caption, withSystem = false }: WeakTableProps) {
  const name = (key: string) => facility.systems.find((one) => one.key === key)?.name ?? key;
  const system: Column<AlikeStretches>[] = withSystem
    ? [{ id: 'system', head: 'System', cell: (row) => name(row.system) }]
    : [];
  const columns: Column<AlikeStretches>[] = [
    { id: 'hours', head: 'Begins', cell: hoursSaid },
    ...system,
    {
      id: 'case',
      head: 'Fault case',
      cell: (row) => (
        <Link href={caseAddress(siteAddress(site, 'systems', row.system), row.case.id)}>{row.case.title}</Link>
      ),
    },
    { id: 'spare', head: 'At the worst hour', cell: ({ spareS }) => <Spare spareS={spareS} /> },
    {
      id: 'who',
      head: 'Who would come',
      cell: ({ way, lastS, system: own }) => (
        <>
          {whoSaid(way, facility)}
          <span className={style.about}>{partsSaid(way, lastS, facility, own)}</span>
        </>
      ),
    },
  ];
  return (
    <Ledger
      caption={caption}
      columns={columns}
      rows={rows}
      keyOf={({ system: own, from, case: { id } }) => `${own} ${from} ${id}`}
    />
  );
}
