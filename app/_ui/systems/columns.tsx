import {
  columnFilteringFeature,
  createColumnHelper,
  createFilteredRowModel,
  createSortedRowModel,
  filterFn_equalsString,
  filterFn_includesString,
  globalFilteringFeature,
  rowSortingFeature,
  tableFeatures,
} from '@tanstack/react-table';
import { CaseCell, FindingsCell, VerdictCell } from './cells';
import { NowCell, SpareCell, SystemCell } from './now-cells';
import { byNumber, byWords, compareGravity, compareTested, spareOf } from './system-order';
import type { SystemRow } from './system-row';

/** What the table can do; a feature that is not named here does nothing, silently. */
export const features = tableFeatures({
  rowSortingFeature,
  columnFilteringFeature,
  globalFilteringFeature,
  sortedRowModel: createSortedRowModel(),
  filteredRowModel: createFilteredRowModel(),
  filterFns: { equalsString: filterFn_equalsString, includesString: filterFn_includesString },
});

const column = createColumnHelper<typeof features, SystemRow>();

const weight = ({ review }: SystemRow) =>
  review ? review.findings.high * 1e6 + review.findings.medium * 1e3 + review.findings.low : -1;

/** The columns, in the order in which a person asks: which, why, how bad, how long, what first. */
export const columns = column.columns([
  column.accessor('name', {
    header: 'System',
    sortFn: (a, b) => byWords(a.original.name, b.original.name),
    cell: ({ row }) => <SystemCell row={row.original} />,
  }),
  column.accessor('siteName', {
    id: 'site',
    header: 'Site',
    filterFn: 'equalsString',
    sortFn: (a, b) => byWords(a.original.siteName, b.original.siteName),
  }),
  column.accessor('kind', {
    header: 'Kind',
    filterFn: 'equalsString',
    sortFn: (a, b) => byWords(a.original.kind, b.original.kind),
  }),
  column.accessor((row) => (row.review ? `${row.review.worst.title} ${row.review.worst.harm}` : ''), {
    id: 'worst',
    header: 'Worst case',
    sortFn: (a, b) => compareGravity(a.original, b.original),
    cell: ({ row }) => <CaseCell row={row.original} />,
  }),
  column.accessor((row) => row.review?.claimed.verdict ?? '', {
    id: 'claimed',
    header: 'As claimed',
    filterFn: 'equalsString',
    sortFn: (a, b) => compareGravity(a.original, b.original),
    cell: ({ row }) => <VerdictCell row={row.original} column="claimed" />,
  }),
  column.accessor((row) => row.review?.tested.verdict ?? '', {
    id: 'tested',
    header: 'As tested',
    sortFn: (a, b) => compareTested(a.original, b.original),
    cell: ({ row }) => <VerdictCell row={row.original} column="tested" />,
  }),
  column.accessor(spareOf, {
    id: 'spare',
    header: 'Time to spare',
    sortFn: (a, b) => byNumber(spareOf(a.original), spareOf(b.original)),
    cell: ({ row }) => <SpareCell row={row.original} />,
  }),
  column.accessor(({ now }) => now.tonightOrder, {
    id: 'tonight',
    header: 'Time to spare tonight',
    sortFn: (a, b) => byNumber(a.original.now.tonightOrder, b.original.now.tonightOrder),
  }),
  column.accessor(({ now }) => now.weight, {
    id: 'now',
    header: 'Now',
    sortFn: (a, b) => byNumber(b.original.now.weight, a.original.now.weight) || compareGravity(a.original, b.original),
    cell: ({ row }) => <NowCell row={row.original} />,
  }),
  column.accessor(weight, {
    id: 'findings',
    header: 'Findings',
    sortFn: (a, b) => byNumber(weight(b.original), weight(a.original)),
    cell: ({ row }) => <FindingsCell row={row.original} />,
  }),
  column.accessor((row) => row.review?.first ?? '', { id: 'first', header: 'What to do first', enableSorting: false }),
]);
