import Link from '../frame/link';
import type { ReviewSummary } from '#core/review/summary';
import { VerdictMark } from '../marks/verdict';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';

/** A kept review in a list. */
export interface Kept {
  id: string;
  /** UTC, ISO. */
  computedAt: string;
  judgedOn: string;
  engineVersion: string;
  summary: ReviewSummary;
}

interface Row extends Kept {
  /** Id of the kept review before this one. */
  before: string | null;
}

/** The kept reviews of a system, newest first, each with the way to what tells it from the one before. */
export function KeptReviews({ kept, zone, at }: { kept: readonly Kept[]; zone: string; at: string }) {
  if (kept.length === 0) return <p>None is kept yet: the next one that is computed will be.</p>;
  const rows: Row[] = kept.map((one, i) => ({ ...one, before: kept[i + 1]?.id ?? null }));
  const columns: Column<Row>[] = [
    { id: 'at', head: 'Computed', cell: ({ computedAt }) => instantSaid(computedAt, zone) },
    { id: 'claimed', head: 'As claimed', cell: ({ summary }) => <Worst worst={summary.worst.claimed} /> },
    { id: 'tested', head: 'As tested', cell: ({ summary }) => <Worst worst={summary.worst.tested} /> },
    {
      id: 'findings',
      head: 'Findings',
      figure: true,
      cell: ({ summary: { grades } }) => grades.high + grades.medium + grades.low,
    },
    { id: 'engine', head: 'Engine', figure: true, cell: ({ engineVersion }) => engineVersion },
    {
      id: 'difference',
      head: 'Difference',
      cell: ({ id, before }) =>
        before === null ? (
          'the first'
        ) : (
          <Link href={`${at}/review/difference?from=${before}&to=${id}`}>from the one before</Link>
        ),
    },
  ];
  return <Ledger caption="Times on the clocks of the site." columns={columns} rows={rows} keyOf={({ id }) => id} />;
}

function Worst({ worst: { verdict, harm } }: { worst: ReviewSummary['worst']['claimed'] }) {
  return <VerdictMark verdict={verdict} of={harm?.class} />;
}
