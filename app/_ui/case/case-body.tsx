import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Column } from '#core/plans/credit';
import type { FaultCase } from '#core/review/result';
import type { CaseTrajectory } from '#core/review/trajectory';
import { SystemDrawing } from '../drawing/system-drawing';
import { Section } from '../frame/section';
import { hourSaid, type Speech } from '../words/said';
import { CaseCautions } from './case-cautions';
import { Course } from './course';
import { FailureMode } from './failure-mode';
import { ThroughTheWeek } from './through-the-week';

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

/** What the drawing cannot show by a mark, by the kind of thing. */
const WHERE: Partial<Record<FaultCase['thing']['kind'], string>> = {
  gateway: 'Nothing in the water is struck: the alarms that travel this way reach nobody.',
  state: 'Struck through: what the state keeps off.',
  room: 'Nothing in the water is struck: the air around all of it is.',
  matter: 'No single thing is struck.',
};

function whereOf({ fault, thing }: FaultCase): string | undefined {
  if (thing.kind !== 'site') return WHERE[thing.kind];
  const utility = fault.startsWith('utility-fails');
  return utility ? 'Circuits that nothing carries when the utility fails are broken lines.' : undefined;
}

/** One fault case from every side. */
export function CaseBody({ facility, system, faultCase, column, trajectory, speech, on }: CaseBodyProps) {
  const [outcome] = faultCase[column].outcomes;
  const begins = `It begins on a ${hourSaid(trajectory.onsetHour)}${outcome ? ', the worst hour for it' : ''}.`;
  return (
    <>
      <Section
        id="course"
        wide
        title="The course when nobody comes"
        note={`${begins} Hatched: beyond a limit of tolerance.`}
      >
        <Course system={system} faultCase={faultCase} column={column} trajectory={trajectory} speech={speech} />
      </Section>
      <ThroughTheWeek
        facility={facility}
        system={system}
        faultCase={faultCase}
        outcome={outcome}
        speech={speech}
        on={on}
      />
      <CaseCautions system={system} faultCase={faultCase} />
      <FailureMode faultCase={faultCase} />
      <Section id="where" wide title="Where it strikes" note={whereOf(faultCase)}>
        <SystemDrawing facility={facility} system={system} fault={faultCase} units={speech.units} on={on} />
      </Section>
    </>
  );
}
