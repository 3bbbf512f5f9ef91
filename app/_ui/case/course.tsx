import type { Column } from '#core/plans/credit';
import type { System } from '#core/facility/system';
import type { FaultCase } from '#core/review/result';
import type { CaseTrajectory } from '#core/review/trajectory';
import { caseTitle } from '#core/review/words';
import { Fold } from '../frame/fold';
import { hourSaid, type Speech } from '../words/said';
import { CaseLog } from './case-log';
import { caseMoments } from './case-moments';
import { LineKey } from './line-key';
import { PlotTable } from './plot-table';
import { chartsOf } from './quantities';
import { TrajectoryPlot } from './trajectory-plot';

interface CourseProps {
  system: System;
  faultCase: FaultCase;
  column: Column;
  trajectory: CaseTrajectory;
  speech: Speech;
  /** Without the plot as a table, which stands on the page of the fault case. */
  isBrief?: boolean;
}

/** What a fault case does when nobody comes: plotted, told and tabled. */
export function Course({ system, faultCase, column, trajectory, speech, isBrief = false }: CourseProps) {
  const { outcomes } = faultCase[column];
  const harm = outcomes[0]?.harm;
  const key = harm?.tank || (trajectory.tracks[0]?.tank ?? '');
  const charts = chartsOf({ trajectory, harm, units: speech.units, main: system.tanks.find((t) => t.key === key) });
  const main = { key, name: speech.names.tank(key) };
  const moments = caseMoments(speech, faultCase[column], trajectory, caseTitle(faultCase));
  const title = `Course of ${caseTitle(faultCase)} when it begins on a ${hourSaid(trajectory.onsetHour)}. The same stands in ${isBrief ? 'the log below' : 'the tables below'}.`;
  return (
    <>
      <LineKey
        main={main.name}
        tanks={[...new Set(trajectory.tracks.map((t) => t.tank))]}
        mainKey={key}
        names={speech.names}
        hub={system.tanks.find((t) => t.role === 'sump')?.key}
      />
      <TrajectoryPlot
        title={title}
        trajectory={trajectory}
        charts={charts}
        moments={moments}
        main={main}
        hub={system.tanks.find((t) => t.role === 'sump')?.key}
      />
      <CaseLog moments={moments} onsetHour={trajectory.onsetHour} />
      {isBrief ? null : (
        <Fold title="The plot as a table">
          <PlotTable charts={charts} main={main} />
        </Fold>
      )}
    </>
  );
}
