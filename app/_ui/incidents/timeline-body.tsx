import type { Contradiction, Interval } from '#core/incidents/intervals';
import type { Mark } from '#core/incidents/marks';
import type { TimelineLine } from '#core/incidents/timeline';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { LiveRefresh } from '../live/live-refresh';
import { IncidentFrame } from './incident-frame';
import type { HeadView } from './incident-view';
import { IntervalTable } from './interval-table';
import { MarkForm } from './mark-form';
import { MarkTable } from './mark-table';
import { SeriesPlots, type SeriesView } from './series-plots';
import { TimelineFilter } from './timeline-filter';
import { TimelineTable } from './timeline-table';

/** The timeline of an incident as it is shown. */
export interface TimelineView {
  head: HeadView;
  lines: TimelineLine[];
  marks: Mark[];
  intervals: Interval[];
  contradictions: Contradiction[];
  series: SeriesView[];
  limits: { sensor: string; name: string; above?: number; below?: number }[];
  fromMs: number;
  toMs: number;
  hours: number;
  ids: Readonly<Record<string, string>>;
}

interface TimelineProps {
  page: TimelineView;
  /** Topics that are shown; all when it is empty. */
  topics: readonly string[];
  units: Custom;
  investigate: FormAction<unknown>;
}

/** Minute by minute what the record knows: marks, the times between them, readings, and every line in order. */
export function TimelineBody({ page, topics, units, investigate }: TimelineProps) {
  const { head, lines, marks, intervals, contradictions } = page;
  const { zone } = head.site;
  const shown = topics.length === 0 ? lines : lines.filter(({ topic }) => topics.includes(topic));
  return (
    <IncidentFrame head={head} page="timeline">
      <Section id="times" title="How long it took" note="From when the fault began, as far as that is known.">
        <IntervalTable intervals={intervals} contradictions={contradictions} />
      </Section>
      <Section
        id="marks"
        title="Marks"
        note="What the record knows by itself is proposed; whoever investigates may set it."
      >
        <MarkTable marks={marks} zone={zone} />
        {head.mayInvestigate ? <MarkForm head={head} marks={marks} ids={page.ids} investigate={investigate} /> : null}
      </Section>
      <Section id="readings" title="Readings" wide>
        <SeriesPlots page={page} units={units} />
      </Section>
      <Section id="timeline" title="Timeline" wide>
        <TimelineFilter hours={page.hours} topics={topics} />
        <TimelineTable lines={shown} zone={zone} units={units} site={head.site.key} />
      </Section>
      <LiveRefresh site={head.site.key} what={['incidents', 'alarms']} />
    </IncidentFrame>
  );
}
