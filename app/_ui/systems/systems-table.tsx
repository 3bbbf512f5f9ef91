'use client';

import { useTable } from '@tanstack/react-table';
import { useQueryStates } from 'nuqs';
import { type ReactNode, useMemo, useTransition } from 'react';
import ledger from '../table/ledger.module.css';
import { addressKeys, tableState } from './address-bar';
import { columns, features } from './columns';
import { atOnce, type ShownFirst } from './shown-first';
import { SystemsFilter } from './systems-filter';
import type { SystemRow } from './system-row';
import { SortHeader } from './sort-header';
import style from './systems-table.module.css';

/** Columns to filter and sort by that are no column to look at: what they hold stands in another. */
const UNSEEN: ReadonlySet<string> = new Set(['site', 'kind', 'tonight']);
/** Columns whose words the field “Find” looks through. */
const FOUND_IN: ReadonlySet<string> = new Set(['name', 'site', 'kind', 'worst', 'first']);
/** What stays the same from one rendering to the next: the table would begin anew with every other. */
const OPTIONS = {
  features,
  columns,
  globalFilterFn: 'includesString',
  getColumnCanGlobalFilter: ({ id }: { id: string }) => FOUND_IN.has(id),
  getRowId: (row: SystemRow) => `${row.site}/${row.system}`,
} as const;

/** Every system in one table, worst first; order and filter are kept in the address bar. */
export function SystemsTable({ packed, all, sites, kinds }: ShownFirst) {
  const { table, address, setAddress, isWhole, isComing } = useSystems(packed, all);
  const found = table.getRowModel().rows;
  const shown = address.show === 'all' ? found : found.slice(0, atOnce(found.length));
  const count = isWhole ? found.length : all;
  const left = isComing ? `looking through all ${all} systems …` : `${count} of ${all} systems`;
  const heads = table.getFlatHeaders().filter(({ id }) => !UNSEEN.has(id));
  const sortBy = (id: string) => () =>
    void setAddress({ sort: { id, desc: address.sort.id === id && !address.sort.desc } });
  return (
    <>
      <SystemsFilter {...{ sites, kinds, address, left }} change={setAddress} />
      <table className={`${ledger.ledger} ${ledger.folding} ${style.systems}`}>
        <caption>
          Time to spare is that of the worst case, as claimed: from now to 07:00 by the rota of tonight, and at its
          worst hour of the week.
        </caption>
        <thead>
          <tr>
            {heads.map(({ id, column }) => (
              <SortHeader
                key={id}
                name={String(column.columnDef.header)}
                sorted={address.sort.id === id ? (address.sort.desc ? 'descending' : 'ascending') : 'none'}
                sort={column.getCanSort() ? sortBy(id) : undefined}
              />
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={row.id} className={row.original.review ? undefined : style.waiting}>
              {row
                .getAllCells()
                .filter(({ column }) => !UNSEEN.has(column.id))
                .map((cell) => (
                  <SystemsCell key={cell.id} id={cell.column.id} head={String(cell.column.columnDef.header)}>
                    <table.FlexRender cell={cell} />
                  </SystemsCell>
                ))}
            </tr>
          ))}
        </tbody>
      </table>
      {isWhole && found.length === 0 ? <p>No system answers to this filter.</p> : null}
      <TheOthers count={count - shown.length} isComing={isComing} show={() => void setAddress({ show: 'all' })} />
    </>
  );
}

/** The table of the rows that are here, as the address asks for it. */
function useSystems(packed: string, all: number) {
  const rows = useMemo(() => JSON.parse(packed) as SystemRow[], [packed]);
  const isWhole = rows.length === all;
  const [isComing, startTransition] = useTransition();
  // The others come with the first thing that is asked of the table; from then on the browser answers by itself.
  const [address, setAddress] = useQueryStates(addressKeys, { shallow: isWhole, startTransition });
  const state = useMemo(() => tableState(address), [address]);
  const table = useTable({ ...OPTIONS, data: rows, state });
  return { table, address, setAddress, isWhole, isComing };
}

interface OthersProps {
  count: number;
  /** Whether they are on their way. */
  isComing: boolean;
  show: () => void;
}

/** Systems that are not shown yet. */
function TheOthers({ count, isComing, show }: OthersProps) {
  if (count === 0) return null;
  return (
    <p>
      <button type="button" className={style.others} disabled={isComing} onClick={show}>
        Show the other {count} systems
      </button>
    </p>
  );
}

/** One cell; the system's name heads its row. On a phone the column's name stands before the value. */
function SystemsCell({ id, head, children }: { id: string; head: string; children: ReactNode }) {
  if (id === 'name') return <th scope="row">{children}</th>;
  return (
    <td>
      <span className={ledger.label} aria-hidden="true">
        {head}
      </span>
      <span>{children}</span>
    </td>
  );
}
