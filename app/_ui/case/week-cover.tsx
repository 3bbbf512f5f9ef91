import type { FaultCase, HarmClass, Outcome } from '#core/review/result';
import { hourWords } from '#core/review/words';
import { Fold } from '../frame/fold';
import { VerdictMark } from '../marks/verdict';
import { CoverChart } from './cover-chart';
import { bareStretches, type CoverPoint, coverPoints } from './cover-points';
import { CoverTable } from './cover-table';
import type { RotaLanes } from './rota-lanes';
import style from './week-cover.module.css';

const CLASS_WORDS: Record<HarmClass, string> = { animals: 'The animals', floor: 'The floor', equipment: 'The pump' };
/** Stretches of the week that are named; the chart shows the rest. */
const NAMED = 4;

/** Time to spare at every hour of the week, for each class of harm, gravest first. */
export function WeekCover({ faultCase, lanes }: { faultCase: FaultCase; lanes: RotaLanes }) {
  const [first, ...rest] = faultCase.claimed.outcomes;
  const testedOf = (o: Outcome) => faultCase.tested.outcomes.find((t) => t.harm.class === o.harm.class);
  if (!first) {
    const [tested] = faultCase.tested.outcomes;
    return tested ? (
      <Cover
        outcome={tested}
        tested={undefined}
        lanes={lanes}
        note="As claimed nothing is harmed; this is the cover as tested."
      />
    ) : null;
  }
  return (
    <>
      <Cover outcome={first} tested={testedOf(first)} lanes={lanes} />
      {rest.map((outcome) => (
        <Fold
          key={outcome.harm.class}
          title={
            <>
              {CLASS_WORDS[outcome.harm.class]}: <VerdictMark verdict={outcome.verdict} />
            </>
          }
        >
          <Cover outcome={outcome} tested={testedOf(outcome)} lanes={lanes} />
        </Fold>
      ))}
    </>
  );
}

interface CoverProps {
  outcome: Outcome;
  tested: Outcome | undefined;
  lanes: RotaLanes;
  note?: string;
}

function Cover({ outcome, tested, lanes, note }: CoverProps) {
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
        title={`Cover chart: ${bareSaid(claimed)} The same stands in the table below.`}
        claimed={claimed}
        tested={differs}
        lanes={lanes}
      />
      <Fold title="The cover chart as a table">
        <CoverTable points={claimed} />
      </Fold>
    </figure>
  );
}

/** The hours with nothing to spare, in words. */
function bareSaid(points: CoverPoint[]): string {
  const stretches = bareStretches(points);
  const hours = stretches.reduce((sum, [, length]) => sum + length, 0);
  if (hours === 0) return 'There is time to spare at every hour of the week.';
  if (hours === points.length) return 'There is nothing to spare at any hour of the week.';
  const longest = [...stretches].sort((a, b) => b[1] - a[1]).slice(0, NAMED);
  const named = longest
    .map(([from, length]) => `${hourWords(from)} to ${hourWords((from + length) % points.length)}`)
    .join('; ');
  return `At ${hours} of 168 hours there is nothing to spare (hatched): ${named}${stretches.length > NAMED ? '; and others' : ''}.`;
}
