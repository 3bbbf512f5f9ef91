import { MARKS, type MarkName } from '#core/incidents/incident';
import type { Mark } from '#core/incidents/marks';
import { MARK_WORDS, SOURCE_WORDS } from '#core/incidents/words';
import { type Column, Ledger } from '../table/ledger';
import { When } from './when';

interface Row {
  name: MarkName;
  mark: Mark | undefined;
}

/** Every mark in its order, known or not. */
export function MarkTable({ marks, zone }: { marks: readonly Mark[]; zone: string }) {
  const rows = MARKS.map((name) => ({ name, mark: marks.find(({ mark }) => mark === name) }));
  const columns: Column<Row>[] = [
    { id: 'mark', head: 'Mark', cell: ({ name }) => MARK_WORDS[name] },
    { id: 'when', head: 'When', cell: ({ mark }) => (mark ? <Span mark={mark} zone={zone} /> : 'not known') },
    { id: 'from', head: 'How it is known', cell: ({ mark }) => (mark ? fromSaid(mark) : '–') },
  ];
  return <Ledger caption={`Times are those of ${zone}.`} columns={columns} rows={rows} keyOf={({ name }) => name} />;
}

function Span({ mark: { atMs, latestMs }, zone }: { mark: Mark; zone: string }) {
  if (latestMs <= atMs) return <When atMs={atMs} zone={zone} />;
  return (
    <>
      between <When atMs={atMs} zone={zone} /> and <When atMs={latestMs} zone={zone} />
    </>
  );
}

function fromSaid({ source, from, entered }: Mark): string {
  const about = from ? `: ${from}` : '';
  return `${entered ? 'entered' : 'from the record'}, ${SOURCE_WORDS[source]}${about}`;
}
