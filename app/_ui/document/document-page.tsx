import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Finding, SystemReview } from '#core/review/result';
import type { StudyState } from '#core/review/study';
import type { CaseTrajectory } from '#core/review/trajectory';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { ReviewsProgress } from '../systems/reviews-progress';
import { namesOf } from '../words/names';
import type { Part } from './block';
import { Blocks, type Drawn } from './blocks';
import style from './document.module.css';
import type { DocumentData, ReviewOrigin } from './document-data';
import { type Kept, KeptReviews } from './kept-reviews';
import { documentParts } from './parts/document-parts';
import { leadBlocks } from './parts/lead';
import './document-page.css';

/** What the page of the document is made from. */
export interface DocumentView {
  facility: Facility;
  system: System;
  siteFindings: Finding[];
  study: StudyState;
  held: { review: SystemReview; origin: ReviewOrigin; isCurrent: boolean } | null;
  courses: Readonly<Record<string, CaseTrajectory>>;
  kept: Kept[];
}

/** The review of a system as a document: to be read, printed and kept. */
export function DocumentPageBody({ page, units }: { page: DocumentView; units: Custom }) {
  const { facility, system, held, courses } = page;
  const at = siteAddress(facility.site.key, 'systems', system.key);
  const speech = { units, names: namesOf(facility, system) };
  const data: DocumentData | null = held && {
    ...page,
    ...held,
    speech,
    at,
    plotted: new Set(Object.keys(courses)),
  };
  const drawn: Drawn = { system, speech, courses };
  const parts = data ? documentParts(data) : [];
  return (
    <Page
      title={`Review of ${system.name}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(facility.site.key), name: facility.site.name },
        { href: at, name: system.name },
      ]}
      lead={
        <>
          {held?.isCurrent ? null : <ReviewsProgress done={0} all={1} />}
          {data ? <Blocks blocks={leadBlocks(data)} drawn={drawn} /> : <p>There is no review of this system yet.</p>}
          {held && !held.isCurrent ? <p>What follows is the review as it was before the last change.</p> : null}
          {data ? <Keep site={facility.site.key} system={system.key} units={units} /> : null}
        </>
      }
    >
      {parts.length > 0 ? <Contents parts={parts} /> : null}
      {parts.map((part) => (
        <Section key={part.id} id={part.id} title={part.title} note={part.note} wide={part.wide}>
          <Blocks blocks={part.blocks} drawn={drawn} />
        </Section>
      ))}
      <Section id="kept" title="Kept reviews" note="Every review that said something else than the one before.">
        <KeptReviews kept={page.kept} zone={facility.site.zone} at={at} />
      </Section>
    </Page>
  );
}

/** How it is taken along. */
function Keep({ site, system, units }: { site: string; system: string; units: Custom }) {
  const file = `/api/sites/${encodeURIComponent(site)}/systems/${encodeURIComponent(system)}/review.pdf?units=${units}`;
  return (
    <p className={style.keep}>
      <a href={file} download>
        Download as PDF
      </a>
      <span>It prints as well, with every fold open: use the print command of the browser.</span>
    </p>
  );
}

function Contents({ parts }: { parts: readonly Part[] }) {
  return (
    <Section id="contents" title="Contents">
      <nav aria-label="Contents">
        <ol className={style.contents}>
          {[...parts, { id: 'kept', title: 'Kept reviews' }].map(({ id, title }) => (
            <li key={id}>
              <a href={`#${id}`}>{title}</a>
            </li>
          ))}
        </ol>
      </nav>
    </Section>
  );
}
