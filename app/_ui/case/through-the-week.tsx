import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { FaultCase, Outcome } from '#core/review/result';
import { bothColumns } from '../document/parts/case-lines';
import { TableSaid } from '../document/table-said';
import { Section } from '../frame/section';
import type { Speech } from '../words/said';
import { heaterWatts } from './heater-watts';
import { NoticedBy } from './noticed-by';
import { rotaLanes } from './rota-lanes';
import { TrySize } from './try-size';
import { WeekCover } from './week-cover';

interface ThroughTheWeekProps {
  facility: Facility;
  system: System;
  faultCase: FaultCase;
  /** The gravest outcome of the column under view. */
  outcome: Outcome | undefined;
  speech: Speech;
  on: string;
}

/** What the hours of the week make of a fault case: time to spare, both columns, how it is noticed. */
export function ThroughTheWeek({ facility, system, faultCase, outcome, speech, on }: ThroughTheWeekProps) {
  const watts = heaterWatts(system, faultCase.thing);
  const alone = { ...facility, systems: [system] };
  return (
    <>
      {outcome ? (
        <Section id="cover" wide title="Time to spare through the week">
          <WeekCover faultCase={faultCase} lanes={rotaLanes(facility, system.key)} />
        </Section>
      ) : null}
      {watts === null ? null : (
        <Section id="size" title="Try another size" note="The same model, run here in your browser. Nothing is kept.">
          <TrySize facility={alone} caseId={faultCase.id} ratedW={watts} units={speech.units} on={on} />
        </Section>
      )}
      <Section id="columns" title="Both columns">
        <TableSaid table={bothColumns(faultCase, speech)} />
      </Section>
      {outcome ? (
        <Section
          id="noticed"
          title="How it is noticed"
          note="Alarms count only when their way to a person is not off and, as tested, proved. Otherwise it is the next round on which it shows."
        >
          <NoticedBy outcome={outcome} speech={speech} />
        </Section>
      ) : null}
    </>
  );
}
