import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';

/** What became of a thing so far. */
export interface History {
  /** Instants at which one before it was retired, ISO 8601 in UTC. */
  before: string[];
  entries: { seq: number; at: string; by: string | null; what: string }[];
}

/** The entries of the record about a thing and about those that had its key before. */
export function ThingHistory({ history: { before, entries }, zone }: { history: History; zone: string }) {
  const columns: Column<History['entries'][number]>[] = [
    { id: 'at', head: 'When', cell: ({ at }) => instantSaid(at, zone) },
    { id: 'what', head: 'What', cell: ({ what }) => what },
    { id: 'by', head: 'By', cell: ({ by }) => by ?? '–' },
    { id: 'seq', head: 'Entry', figure: true, cell: ({ seq }) => seq },
  ];
  return (
    <>
      {before.length > 0 ? (
        <p>Under this key there was another before: retired {before.map((at) => instantSaid(at, zone)).join(', ')}.</p>
      ) : null}
      {entries.length > 0 ? (
        <Ledger
          caption="From the record, newest first."
          columns={columns}
          rows={entries}
          keyOf={({ seq }) => String(seq)}
        />
      ) : (
        <p>The record names it nowhere yet: it came with the first description of the site.</p>
      )}
    </>
  );
}
