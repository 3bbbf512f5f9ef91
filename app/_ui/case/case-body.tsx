import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Column } from '#core/plans/credit';
import { FAULTS } from '#core/faults/catalogue';
import { isRemedy, remedyText } from '#core/review/remedies';
import type { FaultCase } from '#core/review/result';
import type { CaseTrajectory } from '#core/review/trajectory';
import { SystemDrawing } from '../drawing/system-drawing';
import { Section } from '../frame/section';
import { hourSaid, type Speech } from '../words/said';
import { BothColumns } from './both-columns';
import { Course } from './course';
import { NoticedBy } from './noticed-by';
import { rotaLanes } from './rota-lanes';
import { WeekCover } from './week-cover';

interface CaseBodyProps {
  facility: Facility;
  system: System;
  faultCase: FaultCase;
  /** The column whose course is drawn: as claimed, unless only as tested anything is harmed. */
  column: Column;
  trajectory: CaseTrajectory;
  speech: Speech;
  /** ISO date the tests are judged on. */
  on: string;
}

/** One fault case from every side. */
export function CaseBody({ facility, system, faultCase, column, trajectory, speech, on }: CaseBodyProps) {
  const fault = FAULTS.find((f) => f.id === faultCase.fault);
  const [outcome] = faultCase[column].outcomes;
  return (
    <>
      <Section
        id="course"
        wide
        title="The course when nobody comes"
        note={`It begins on a ${hourSaid(trajectory.onsetHour)}, the worst hour for it. Hatched: beyond a limit of tolerance.`}
      >
        <Course system={system} faultCase={faultCase} column={column} trajectory={trajectory} speech={speech} />
      </Section>
      {outcome ? (
        <Section id="cover" wide title="Time to spare through the week">
          <WeekCover faultCase={faultCase} lanes={rotaLanes(facility, system.key)} />
        </Section>
      ) : null}
      <Section id="columns" title="Both columns">
        <BothColumns faultCase={faultCase} speech={speech} />
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
      <Section
        id="remedies"
        title="What would answer it"
        note="Most direct first. Whether each is in place already is seen under the system’s findings."
      >
        <ol>
          {faultCase.remedies.filter(isRemedy).map((id) => (
            <li key={id}>{remedyText(id)}</li>
          ))}
        </ol>
      </Section>
      <Section id="where" wide title="Where it strikes">
        <SystemDrawing facility={facility} system={system} thing={faultCase.thing} units={speech.units} on={on} />
      </Section>
      {fault ? (
        <Section id="source" title="The failure mode">
          <p>{fault.effect}</p>
          <p>Source: {fault.source}.</p>
        </Section>
      ) : null}
    </>
  );
}
