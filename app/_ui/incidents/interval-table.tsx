import type { Contradiction, Interval } from '#core/incidents/intervals';
import { INTERVAL_WORDS, MARK_WORDS } from '#core/incidents/words';
import { type Column, Ledger } from '../table/ledger';
import { lasting } from '../words/lasting';
import style from './incidents.module.css';

/** How long it took to notice, to tell, to acknowledge, to get there and to put it right; and what contradicts itself. */
export function IntervalTable({
  intervals,
  contradictions,
}: {
  intervals: readonly Interval[];
  contradictions: readonly Contradiction[];
}) {
  return (
    <>
      {intervals.length === 0 ? (
        <p>No time can be told yet: it takes the mark “{MARK_WORDS['fault-began']}” and one of those after it.</p>
      ) : (
        <Ledger
          caption="Times between the marks below."
          columns={COLUMNS}
          rows={[...intervals]}
          keyOf={(one) => one.name}
          narrow
        />
      )}
      {contradictions.map(({ earlier, later, byS }) => (
        <p key={`${earlier}${later}`}>
          <span aria-hidden="true" className={style.mark}>
            ▲
          </span>{' '}
          <strong>Contradiction:</strong> “{MARK_WORDS[later]}” stands {lasting(byS)} before “{MARK_WORDS[earlier]}”.
          One of the two times is wrong, or it was learnt in another way: say which in the log.
        </p>
      ))}
    </>
  );
}

const COLUMNS: Column<Interval>[] = [
  { id: 'name', head: 'Time', cell: ({ name }) => INTERVAL_WORDS[name] },
  { id: 'after', head: 'After it began', figure: true, cell: afterSaid },
  {
    id: 'since',
    head: 'After the one before',
    figure: true,
    cell: ({ sinceS, since }) =>
      sinceS === null || since === null ? '–' : `${signed(sinceS)} after “${MARK_WORDS[since].toLowerCase()}”`,
  },
];

/** A time after the fault began; a range where it began at some time between two. */
function afterSaid({ leastS, mostS }: Interval): string {
  const same = Math.abs(mostS - leastS) < 1;
  return same ? signed(mostS) : `${signed(leastS)} to ${signed(mostS)}`;
}

function signed(seconds: number): string {
  return seconds < 0 ? `−${lasting(-seconds)}` : lasting(seconds);
}
