import type { FaultCase, HarmClass, Outcome } from '#core/review/result';
import { Fold } from '../frame/fold';
import { VerdictMark } from '../marks/verdict';
import { bareSaid } from './bare-said';
import { CoverChart } from './cover-chart';
import { coverPoints } from './cover-points';
import { CoverTable } from './cover-table';
import type { RotaLanes } from './rota-lanes';
import style from './week-cover.module.css';

const CLASS_WORDS: Record<HarmClass, string> = { animals: 'The animals', floor: 'The floor', equipment: 'The pump' };

interface WeekCoverProps {
  faultCase: FaultCase;
  lanes: RotaLanes;
  /** Only the curve of the gravest harm; the rest stands on the page of the fault case. */
  isBrief?: boolean;
}

/** Time to spare at every hour of the week, for each class of harm, gravest first. */
export function WeekCover({ faultCase, lanes, isBrief = false }: WeekCoverProps) {
  const [first, ...rest] = faultCase.claimed.outcomes;
  const testedOf = (o: Outcome) => faultCase.tested.outcomes.find((t) => t.harm.class === o.harm.class);
  if (!first) {
    const [tested] = faultCase.tested.outcomes;
    return tested ? (
      <Cover
        outcome={tested}
        tested={undefined}
        lanes={lanes}
        isBrief={isBrief}
        note="As claimed nothing is harmed; this is the cover as tested."
      />
    ) : null;
  }
  return (
    <>
      <Cover outcome={first} tested={testedOf(first)} lanes={lanes} isBrief={isBrief} />
      {(isBrief ? [] : rest).map((outcome) => (
        <Fold
          key={outcome.harm.class}
          title={
            <>
              {CLASS_WORDS[outcome.harm.class]}: <VerdictMark verdict={outcome.verdict} />
            </>
          }
        >
          <Cover outcome={outcome} tested={testedOf(outcome)} lanes={lanes} isBrief={false} />
        </Fold>
      ))}
    </>
  );
}

interface CoverProps {
  outcome: Outcome;
  tested: Outcome | undefined;
  lanes: RotaLanes;
  isBrief: boolean;
  note?: string;
}

function Cover({ outcome, tested, lanes, isBrief, note }: CoverProps) {
  const claimed = coverPoints(outcome);
  const other = tested ? coverPoints(tested) : null;
  const differs = other?.some((p, i) => p.spareH !== claimed[i]?.spareH) ? other : null;
  return (
    <figure className={style.cover}>
      <figcaption>
        {note ? `${note} ` : ''}
        {bareSaid(claimed)} {differs ? 'The broken line is the cover as tested.' : ''}
      </figcaption>
      <CoverChart
        title={`Cover chart: ${bareSaid(claimed)} The same stands in ${isBrief ? 'a table on the page of the fault case' : 'the table below'}.`}
        claimed={claimed}
        tested={differs}
        lanes={lanes}
      />
      {isBrief ? null : (
        <Fold title="The cover chart as a table">
          <CoverTable points={claimed} />
        </Fold>
      )}
    </figure>
  );
}
