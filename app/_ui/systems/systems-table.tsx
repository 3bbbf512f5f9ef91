'use client';

import { useTable } from '@tanstack/react-table';
import { useQueryStates } from 'nuqs';
import { type ReactNode, useMemo, useState } from 'react';
import ledger from '../table/ledger.module.css';
import { addressKeys, tableState } from './address-bar';
import { columns, features } from './columns';
import { unpackRows } from './packed-rows';
import { SystemsFilter } from './systems-filter';
import type { SystemRow } from './system-row';
import { SortHeader } from './sort-header';
import style from './systems-table.module.css';

/** Columns to filter and sort by that are no column to look at: what they hold stands in another. */
const UNSEEN: ReadonlySet<string> = new Set(['site', 'kind', 'tonight']);
/** Columns whose words the field “Find” looks through. */
const FOUND_IN: ReadonlySet<string> = new Set(['name', 'site', 'kind', 'worst', 'first']);
/** Systems shown at once, the worst first: a thousand take a page a second to draw, and nobody reads them from the top. */
const AT_ONCE = 100;
/** What stays the same from one rendering to the next: the table would begin anew with every other. */
const OPTIONS = {
  features,
  columns,
  globalFilterFn: 'includesString',
  getColumnCanGlobalFilter: ({ id }: { id: string }) => FOUND_IN.has(id),
  getRowId: (row: SystemRow) => `${row.site}/${row.system}`,
} as const;

/** Every system in one table, worst first; order and filter are kept in the address bar. @param packed its rows, as one text */
export function SystemsTable({ packed }: { packed: string }) {
  const rows = useMemo(() => unpackRows(packed), [packed]);
  const [address, setAddress] = useQueryStates(addressKeys);
  const state = useMemo(() => tableState(address), [address]);
  const table = useTable({ ...OPTIONS, data: rows, state });
  const [isWhole, setIsWhole] = useState(false);
  const found = table.getRowModel().rows;
  const shown = isWhole ? found : found.slice(0, AT_ONCE);
  const heads = table.getFlatHeaders().filter(({ id }) => !UNSEEN.has(id));
  const sortBy = (id: string) => () =>
    void setAddress({ sort: { id, desc: address.sort.id === id && !address.sort.desc } });
  return (
    <>
      <SystemsFilter rows={rows} address={address} change={setAddress} shown={found.length} />
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
      {found.length === 0 ? <p>No system answers to this filter.</p> : null}
      <TheOthers count={found.length - shown.length} show={() => setIsWhole(true)} />
    </>
  );
}

/** Systems that are not shown yet. */
function TheOthers({ count, show }: { count: number; show: () => void }) {
  if (count === 0) return null;
  return (
    <p>
      <button type="button" onClick={show}>
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
