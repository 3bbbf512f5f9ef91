import 'server-only';
import { ok, type Result } from '#core/result';
import type { z } from 'zod';
import { reportPlace } from '#shape/incidents/place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { USUAL_HOURS } from './around';
import { findIncidentAt, headOf, type IncidentHead, type StoryView } from './find-incident-at';
import { type Findings, findingsOf } from './get-investigation';
import { type TimelinePage, timelineOf } from './get-timeline';

/** All of an incident, as it is printed. */
export interface ReportPage extends Findings, Omit<TimelinePage, 'head'> {
  head: IncidentHead;
  story: StoryView[];
  called: ReadonlyMap<string, string>;
  /** Whether persons are named, or told by their roles. */
  isNamed: boolean;
}

export const getReportShape = reportPlace;

/** All of an incident in one plain report. */
export async function getReport(
  who: Who,
  { names, hours = USUAL_HOURS, ...place }: z.output<typeof reportPlace>,
): Promise<Result<ReportPage, Refusal>> {
  const found = await findIncidentAt(who, 'read-record', place);
  if (!found.ok) return found;
  const told = await headOf(who, found.value);
  const timeline = await timelineOf(found.value, told, hours);
  const began = timeline.marks.find(({ mark }) => mark === 'fault-began');
  const startMs = began?.atMs ?? found.value.incident.openedAt.getTime();
  const findings = await findingsOf(found.value, timeline.marks, startMs);
  return ok({ ...told, ...timeline, ...findings, isNamed: names === 'yes' });
}
