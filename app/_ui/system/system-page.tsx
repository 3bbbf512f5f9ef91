import type { ReactNode } from 'react';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { FirstFix } from '#core/review/first-fix';
import type { Finding, SystemReview } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { type UseLine, UseSection } from '../rounds/use-section';
import { ReviewsProgress } from '../systems/reviews-progress';
import { KIND_WORDS } from '../words/kinds';
import { namesOf } from '../words/names';
import { SystemBody } from './system-body';
import { SystemLead } from './system-lead';
import { SystemWaiting } from './system-waiting';

/** What the page of a system is made from. */
export interface SystemPageData {
  facility: Facility;
  system: System;
  /** ISO date at the site. */
  today: string;
  state: { state: 'current' } | { state: 'under-way'; done: number; of: number } | { state: 'broken' };
  review: SystemReview | null;
  siteFindings: Finding[];
  /** The change to make first; null while it is not known. */
  firstFix: FirstFix | null;
  /** Whether the person may describe the system. */
  mayDescribe: boolean;
  /** What is used a day, by the rounds. */
  use: UseLine[];
}

/** The page of one system. @param now what of the moment stands before its review */
export function SystemPageBody({ page, units, now }: { page: SystemPageData; units: Custom; now: ReactNode }) {
  const { facility, system, today, state, review } = page;
  const speech = { units, names: namesOf(facility, system) };
  const at = siteAddress(facility.site.key, 'systems', system.key);
  return (
    <Page
      title={system.name}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(facility.site.key), name: facility.site.name },
      ]}
      lead={
        <>
          <p>
            {facility.site.name}, {KIND_WORDS[system.kind]}. Tests judged on {today}.
          </p>
          {state.state === 'under-way' ? (
            <ReviewsProgress done={state.done} all={Math.max(state.of, state.done + 1)} />
          ) : null}
          {state.state === 'under-way' && review ? (
            <p>What follows is the review as it was before the last change.</p>
          ) : null}
          {state.state === 'broken' ? <p>Computing the review broke. The reason is in the log.</p> : null}
          {review ? <SystemLead review={review} fix={page.firstFix} speech={speech} at={at} /> : null}
        </>
      }
    >
      {now}
      <UseSection use={page.use} units={units} zone={facility.site.zone} />
      {review ? (
        <SystemBody
          facility={facility}
          system={system}
          review={review}
          siteFindings={page.siteFindings}
          speech={speech}
          on={today}
          at={at}
          mayDescribe={page.mayDescribe}
        />
      ) : (
        <SystemWaiting facility={facility} system={system} speech={speech} on={today} />
      )}
    </Page>
  );
}
