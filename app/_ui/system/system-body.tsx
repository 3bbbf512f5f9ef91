import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Finding, SystemReview } from '#core/review/result';
import { gravest } from '#core/review/gravest';
import { caseTitle } from '#core/review/words';
import { SystemDrawing } from '../drawing/system-drawing';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { VerdictLegend } from '../marks/verdict-legend';
import type { Speech } from '../words/said';
import { CasesTable } from './cases-table';
import { OF_HOLDFAST } from '#core/cautions/cautions-for';
import { Cautions } from './cautions';
import { Description } from './description';
import { FindingsList } from './findings-list';
import { InputsTable } from './inputs-table';
import { MarksLegend } from './marks-legend';
import { OpenFigures, openOf } from './open-figures';
import { PowerTable } from './power-table';

interface SystemBodyProps {
  facility: Facility;
  system: System;
  review: SystemReview;
  siteFindings: Finding[];
  speech: Speech;
  /** ISO date the tests are judged on. */
  on: string;
  /** Address of the system's page. */
  at: string;
  /** Whether the person may describe the system. */
  mayDescribe: boolean;
}

/** One system with its review. */
export function SystemBody(props: SystemBodyProps) {
  const { facility, system, review, speech, on, at } = props;
  const worst = gravest(review, 'claimed');
  const shown = worst.outcome ? worst.case : null;
  const marked = shown ? `Marked: ${caseTitle(shown)}, the worst fault case.` : undefined;
  return (
    <>
      <WhatToDo {...props} />
      <Section id="drawing" wide title="What it is" note={marked}>
        <SystemDrawing facility={facility} system={system} fault={shown} units={speech.units} on={on} />
        <Fold title="The drawing as a table">
          <PowerTable facility={facility} system={system} names={speech.names} />
        </Fold>
        <Description facility={facility} system={system} speech={speech} on={on} />
      </Section>
      <Section id="cases" wide title="Fault cases" note={<MarksLegend />}>
        <CasesTable cases={review.cases} speech={speech} at={at} />
        <Fold title="What the verdicts mean">
          <VerdictLegend />
        </Fold>
      </Section>
      <Unknowns {...props} />
    </>
  );
}

function WhatToDo({ system, review, siteFindings, speech, at }: SystemBodyProps) {
  return (
    <>
      <Section id="findings" title="What to do" note="Grouped by what would answer it, most urgent first.">
        {review.findings.length === 0 ? <p>Nothing was found.</p> : null}
        <FindingsList findings={review.findings} review={review} speech={speech} at={at} />
        {siteFindings.length > 0 ? (
          <Fold title={`Findings about the site (${siteFindings.length})`}>
            <FindingsList findings={siteFindings} review={null} speech={speech} at={at} />
          </Fold>
        ) : null}
      </Section>
      <Section
        id="cautions"
        title="Before any work"
        note="Where it can hurt somebody. Local codes, licensed people and the makers’ instructions come first."
      >
        <Cautions system={system} review={review} />
      </Section>
      <Section id="reading" title="How to read this">
        <ul>
          {OF_HOLDFAST.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Section>
    </>
  );
}

function Unknowns({ facility, review, speech, at, mayDescribe }: SystemBodyProps) {
  const { inputs, askNext, notModelled } = review;
  return (
    <>
      {openOf(inputs, askNext).length > 0 ? (
        <Section id="open" wide title="What to find out next" note="Most gain first.">
          <OpenFigures
            inputs={inputs}
            askNext={askNext}
            units={speech.units}
            describeAt={mayDescribe ? facility.site.key : null}
          />
        </Section>
      ) : null}
      <Section
        id="inputs"
        wide
        title="What was filled in"
        note={`${inputs.length} figures are defaults or carry a plausible range.`}
      >
        <p>
          <Link href={`${at}/calibration`}>What the readings say of figures that are hard to measure</Link>
        </p>
        <Fold title="Show them with source and confidence">
          <InputsTable inputs={inputs} askNext={askNext} units={speech.units} />
        </Fold>
      </Section>
      <Section id="not-modelled" title="Not modelled" note="These can kill as well. Holdfast does not compute them.">
        <ul>
          {notModelled.map((hazard) => (
            <li key={hazard}>{hazard}</li>
          ))}
        </ul>
      </Section>
    </>
  );
}
