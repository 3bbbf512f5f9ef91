import type { ColumnFiltersState, SortingState } from '@tanstack/react-table';
import { createParser, parseAsString, parseAsStringLiteral } from 'nuqs';
import type { ASKS } from './asked';

/** The table's order as it stands in the address bar: `worst`, or `-spare` for the other way round. */
const order = createParser<{ id: string; desc: boolean }>({
  parse: (text) => {
    const id = text.replace(/^-/, '');
    return SORTABLE.has(id) ? { id, desc: text.startsWith('-') } : null;
  },
  serialize: ({ id, desc }) => `${desc ? '-' : ''}${id}`,
  eq: (a, b) => a.id === b.id && a.desc === b.desc,
});

const SORTABLE = new Set(['name', 'site', 'kind', 'worst', 'claimed', 'tested', 'spare', 'tonight', 'now', 'findings']);

/** What of the table is kept in the address bar, and so in a link that is passed on. */
export const addressKeys = {
  sort: order.withDefault({ id: 'worst', desc: false }),
  find: parseAsString.withDefault(''),
  site: parseAsString.withDefault(''),
  kind: parseAsString.withDefault(''),
  verdict: parseAsString.withDefault(''),
  show: parseAsStringLiteral(['worst', 'all']).withDefault('worst'),
} satisfies Record<(typeof ASKS)[number], unknown>;

/** The address bar's values. */
export interface Address {
  sort: { id: string; desc: boolean };
  find: string;
  site: string;
  kind: string;
  verdict: string;
  /** Whether only the first are shown, or all. */
  show: 'worst' | 'all';
}

/** The table's state that the address means. */
export function tableState({ sort, find, site, kind, verdict }: Address): {
  sorting: SortingState;
  columnFilters: ColumnFiltersState;
  globalFilter: string;
} {
  const filters = [
    { id: 'site', value: site },
    { id: 'kind', value: kind },
    { id: 'claimed', value: verdict },
  ];
  return { sorting: [sort], columnFilters: filters.filter(({ value }) => value !== ''), globalFilter: find };
}
