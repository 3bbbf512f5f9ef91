import type { Outcome } from '#core/review/result';
import { type Column, Ledger } from '../table/ledger';
import { lasting } from '../words/lasting';
import { noticeSaid, type Speech } from '../words/said';

interface Way {
  says: string;
  hours: number;
  soonestS: number;
  latestS: number;
}

/** How a fault case is noticed over the hours of the week. */
export function NoticedBy({ outcome, speech }: { outcome: Outcome; speech: Speech }) {
  const columns: Column<Way>[] = [
    { id: 'says', head: 'Noticed', cell: (way) => way.says },
    { id: 'hours', head: 'Hours of the week', figure: true, cell: (way) => way.hours },
    {
      id: 'soonest',
      head: 'Soonest after',
      figure: true,
      cell: (way) => (Number.isFinite(way.soonestS) ? lasting(way.soonestS) : 'never'),
    },
    {
      id: 'latest',
      head: 'Latest after',
      figure: true,
      cell: (way) => (Number.isFinite(way.latestS) ? lasting(way.latestS) : 'never'),
    },
  ];
  return (
    <Ledger
      caption="What comes first, by the hour at which the fault begins"
      columns={columns}
      rows={waysOf(outcome, speech)}
      keyOf={(way) => way.says}
    />
  );
}

function waysOf(outcome: Outcome, speech: Speech): Way[] {
  const ways = new Map<string, Way>();
  for (const [hour, notice] of outcome.noticeBy.entries()) {
    const says = noticeSaid(speech, notice);
    const atS = outcome.noticeS[hour] ?? Number.POSITIVE_INFINITY;
    const known = ways.get(says) ?? { says, hours: 0, soonestS: atS, latestS: atS };
    ways.set(says, {
      says,
      hours: known.hours + 1,
      soonestS: Math.min(known.soonestS, atS),
      latestS: Math.max(known.latestS, atS),
    });
  }
  return [...ways.values()].sort((a, b) => b.hours - a.hours);
}
