import Link from '../frame/link';
import { namesApart } from '#core/incidents/doers';
import { PARTS } from '#core/incidents/incident';
import type { Doer, TimelineLine } from '#core/incidents/timeline';
import { type Called, PART_WORDS, SIGNER_WORDS, STATE_WORDS } from '#core/incidents/words';
import type { Signer } from '#core/incidents/incident';
import type { Custom } from '#core/units/shown';
import { Section } from '../frame/section';
import { ActionTable } from './action-table';
import { ComparedSaid } from './case-compared';
import { CauseList } from './cause-list';
import cautions from './cautions.json';
import { DeedTable } from './deed-table';
import { IncidentFrame } from './incident-frame';
import { incidentAddress, type StoryView } from './incident-view';
import style from './incidents.module.css';
import { IntervalTable } from './interval-table';
import type { FindingsView } from './investigation-view';
import { LossTable } from './loss-table';
import { MarkTable } from './mark-table';
import './report-page.css';
import { SeriesPlots } from './series-plots';
import type { TimelineView } from './timeline-body';
import { TimelineTable } from './timeline-table';
import { When } from './when';

/** All of an incident, as it is printed. */
export interface ReportView extends FindingsView, TimelineView {
  story: StoryView[];
  called: Called;
  isNamed: boolean;
}

/** The report of an incident: facts first, opinion apart; with roles in the place of names unless names are asked for. */
export function ReportBody({ page, units }: { page: ReportView; units: Custom }) {
  const { head, lines, marks, isNamed } = page;
  const doers = doersIn(page);
  const called = isNamed ? undefined : namesApart(doers);
  const shown = isNamed ? head : withoutNames(head, called ?? new Map());
  return (
    <IncidentFrame head={shown} page="print">
      <p className={style.onScreen}>
        This page prints as a report: use the print command of the browser.{' '}
        {isNamed ? (
          <Link href={incidentAddress(head, 'print')}>With roles in the place of names</Link>
        ) : (
          <Link href={`${incidentAddress(head, 'print')}?names=yes`}>With names</Link>
        )}
        . What people typed stands as they typed it.
      </p>
      <Facts page={{ ...page, head: shown }} units={units} />
      <Section id="report-timeline" title="Timeline" wide>
        <TimelineTable lines={lines} zone={head.site.zone} units={units} called={called} />
      </Section>
      <Section id="report-readings" title="Readings" wide>
        <SeriesPlots page={{ ...page, marks }} units={units} />
      </Section>
      <Opinion page={{ ...page, head: shown }} />
      <Section id="report-cautions" title="How to read this">
        <ul>
          {cautions.report.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Section>
    </IncidentFrame>
  );
}

function Facts({ page, units }: { page: ReportView; units: Custom }) {
  const { head, marks, intervals, contradictions } = page;
  return (
    <>
      <h2 className={style.part}>Facts</h2>
      <Section id="report-losses" title="Losses">
        <LossTable page={page} units={units} />
      </Section>
      <Section id="report-marks" title="Marks">
        <MarkTable marks={marks} zone={head.site.zone} />
      </Section>
      <Section id="report-times" title="How long it took">
        <IntervalTable intervals={intervals} contradictions={contradictions} />
      </Section>
      <Section id="report-safeguards" title="What each safeguard did" wide>
        <DeedTable page={page} form={null} />
      </Section>
    </>
  );
}

function Opinion({ page }: { page: ReportView }) {
  const { head, causes, choice, summary } = page;
  return (
    <>
      <h2 className={style.part}>Opinion and what follows</h2>
      <Section id="report-causes" title="Causes">
        <CauseList causes={causes} />
      </Section>
      <Section id="report-summary" title="Summary">
        {PARTS.filter((part) => part !== 'case').map((part) => (
          <div key={part}>
            <h3>{PART_WORDS[part]}</h3>
            <p className={style.said}>{summary.find(({ body }) => body.part === part)?.body.text ?? 'Not written.'}</p>
          </div>
        ))}
      </Section>
      <Section id="report-case" title="Held against the review">
        <ComparedSaid head={head} choice={choice} />
      </Section>
      <Section id="report-actions" title="Actions" wide>
        <ActionTable page={page} done={null} />
      </Section>
      <Section id="report-signatures" title="Signatures">
        <p>It is {STATE_WORDS[head.state]}.</p>
        <ul>
          {head.signatures.map(({ as, who, atMs }) => (
            <li key={as}>
              {SIGNER_WORDS[as as Signer]}: {who.name}, <When atMs={atMs} zone={head.site.zone} />
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

/** Everybody who is told of, in the order of the timeline. */
function doersIn({ head, lines, story }: ReportView): Doer[] {
  const onLines = lines.flatMap(({ who }: TimelineLine) => (who ? [who] : []));
  return [...onLines, ...story.map(({ who }) => who), head.openedBy, ...head.signatures.map(({ who }) => who)];
}

function withoutNames(head: ReportView['head'], called: ReadonlyMap<string, string>): ReportView['head'] {
  const apart = (who: Doer): Doer => ({ name: called.get(who.name) ?? 'somebody', role: null });
  return {
    ...head,
    openedBy: apart(head.openedBy),
    signatures: head.signatures.map((one) => ({ ...one, who: apart(one.who) })),
  };
}
