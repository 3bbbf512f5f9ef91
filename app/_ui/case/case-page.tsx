import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Column } from '#core/plans/credit';
import type { FaultCase } from '#core/review/result';
import type { CaseTrajectory } from '#core/review/trajectory';
import { caseTitle, judgementSentence } from '#core/review/words';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { VerdictLine } from '../marks/verdict-line';
import { namesOf } from '../words/names';
import { outcomeSaid } from '../words/said';
import { CaseBody } from './case-body';
import { CaseMarks } from './case-marks';

/** What the page of a fault case is made from. */
export interface CasePageData {
  facility: Facility;
  system: System;
  /** ISO date at the site. */
  today: string;
  case: FaultCase;
  trajectories: Record<Column, CaseTrajectory> | null;
}

/** The page of one fault case. */
export function CasePageBody({ page, units }: { page: CasePageData; units: Custom }) {
  const { facility, system, today, case: faultCase, trajectories } = page;
  const { claimed, tested } = faultCase;
  const speech = { units, names: namesOf(facility, system) };
  const column: Column = claimed.outcomes.length > 0 ? 'claimed' : 'tested';
  const [outcome] = faultCase[column].outcomes;
  const at = siteAddress(facility.site.key, 'systems', system.key);
  return (
    <Page
      title={caseTitle(faultCase)}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(facility.site.key), name: facility.site.name },
        { href: at, name: system.name },
      ]}
      lead={
        <>
          <VerdictLine
            claimed={{ verdict: claimed.verdict, befalls: claimed.outcomes[0]?.harm.class }}
            tested={{ verdict: tested.verdict, befalls: tested.outcomes[0]?.harm.class }}
            unsure={faultCase.unsure}
          />
          <p>
            {column === 'tested' && outcome ? 'As claimed nothing is harmed. As tested: ' : ''}
            {outcome ? outcomeSaid(speech, outcome) : judgementSentence(claimed)}
          </p>
        </>
      }
    >
      <CaseMarks faultCase={faultCase} tankName={speech.names.tank} />
      {trajectories ? (
        <CaseBody
          facility={facility}
          system={system}
          faultCase={faultCase}
          column={column}
          trajectory={trajectories[column]}
          speech={speech}
          on={today}
        />
      ) : null}
    </Page>
  );
}
