'use client';

import { useTable } from '@tanstack/react-table';
import { useQueryStates } from 'nuqs';
import { useMemo } from 'react';
import ledger from '../table/ledger.module.css';
import { addressKeys, tableState } from './address-bar';
import { columns, features } from './columns';
import { SystemsFilter } from './systems-filter';
import type { SystemRow } from './system-row';
import { SortHeader } from './sort-header';
import style from './systems-table.module.css';

const FIGURES = new Set(['spare']);

/** Every system in one table, worst first; order and filter are kept in the address bar. */
export function SystemsTable({ rows }: { rows: SystemRow[] }) {
  const [address, setAddress] = useQueryStates(addressKeys);
  const state = useMemo(() => tableState(address), [address]);
  const table = useTable({
    features,
    columns,
    data: rows,
    state,
    globalFilterFn: 'includesString',
    getColumnCanGlobalFilter: ({ id }) => ['name', 'site', 'kind', 'worst', 'first'].includes(id),
    getRowId: (row) => `${row.site}/${row.system}`,
  });
  const shown = table.getRowModel().rows;
  return (
    <>
      <SystemsFilter rows={rows} address={address} change={setAddress} shown={shown.length} />
      <table className={`${ledger.ledger} ${ledger.folding} ${style.systems}`}>
        <caption>Time to spare is that of the worst case, as claimed, at its worst hour of the week.</caption>
        <thead>
          {table.getHeaderGroups().map((group) => (
            <tr key={group.id}>
              {group.headers.map(({ id, column }) => (
                <SortHeader
                  key={id}
                  name={String(column.columnDef.header)}
                  figure={FIGURES.has(id)}
                  sorted={address.sort.id === id ? (address.sort.desc ? 'descending' : 'ascending') : 'none'}
                  sort={
                    column.getCanSort()
                      ? () => void setAddress({ sort: { id, desc: address.sort.id === id && !address.sort.desc } })
                      : undefined
                  }
                />
              ))}
            </tr>
          ))}
        </thead>
        <tbody>
          {shown.map((row) => (
            <tr key={row.id} className={row.original.review ? undefined : style.waiting}>
              {row.getAllCells().map((cell) => {
                const Cell = cell.column.id === 'name' ? 'th' : 'td';
                return (
                  <Cell
                    key={cell.id}
                    scope={cell.column.id === 'name' ? 'row' : undefined}
                    className={FIGURES.has(cell.column.id) ? ledger.figure : undefined}
                  >
                    <span className={ledger.label} aria-hidden="true">
                      {cell.column.id === 'name' ? null : String(cell.column.columnDef.header)}
                    </span>
                    <span>
                      <table.FlexRender cell={cell} />
                    </span>
                  </Cell>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      {shown.length === 0 ? <p>No system answers to this filter.</p> : null}
    </>
  );
}
