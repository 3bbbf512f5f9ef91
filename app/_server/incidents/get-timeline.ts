import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { SensorQuantity } from '#core/facility/system';
import { type Contradiction, contradictionsIn, type Interval, intervalsOf } from '#core/incidents/intervals';
import type { Mark } from '#core/incidents/marks';
import { type Doer, mergeTimeline, type TimelineLine } from '#core/incidents/timeline';
import { ok, type Result } from '#core/result';
import { nearPlans, nearSafeguards, nearStates } from '#data/incidents/near-changes';
import { type NearSeries, nearSeries } from '#data/incidents/near-readings';
import { nearRoundEntries } from '#data/incidents/near-rounds';
import { doersOf } from '#data/incidents/people';
import { sensorsOf } from '#data/incidents/sensors';
import { timelinePlace, type TimelinePlace } from '#shape/incidents/place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { rotaOf } from '../rota/rota-of';
import { type Around, aroundIncident, USUAL_HOURS } from './around';
import { findIncidentAt, headOf, type IncidentAt, type IncidentHead, type StoryView } from './find-incident-at';
import { freshIds } from './get-incident';
import { alarmLines } from './lines/alarm-lines';
import { planLines, safeguardLines, stateLines } from './lines/change-lines';
import { entryLines, markLines } from './lines/entry-lines';
import { limitsIn, readingLines, type SensorLimit } from './lines/reading-lines';
import { rotaLines } from './lines/rota-lines';
import { roundLines } from './lines/round-lines';

/** The timeline of an incident, built from the record, with its marks and the times between them. */
export interface TimelinePage {
  head: IncidentHead;
  lines: TimelineLine[];
  marks: Mark[];
  intervals: Interval[];
  contradictions: Contradiction[];
  series: NearSeries[];
  limits: SensorLimit[];
  fromMs: number;
  toMs: number;
  /** Hours before it began that are shown. */
  hours: number;
  /** Id for the next mark. */
  ids: Readonly<Record<string, string>>;
}

export const getTimelineShape = timelinePlace;

/** The timeline of an incident: from some hours before it began to its end. */
export async function getTimeline(
  who: Who,
  { hours = USUAL_HOURS, ...place }: TimelinePlace,
): Promise<Result<TimelinePage, Refusal>> {
  const found = await findIncidentAt(who, 'read-record', place);
  if (!found.ok) return found;
  const { head, story, called } = await headOf(who, found.value);
  return ok({ head, ...(await timelineOf(found.value, { story, called }, hours)) });
}

/** What is told on the timeline. @param hours before it began */
export async function timelineOf(
  at: IncidentAt,
  told: { story: readonly StoryView[]; called: ReadonlyMap<string, string> },
  hours: number,
): Promise<Omit<TimelinePage, 'head'>> {
  const around = await aroundIncident(at, hours);
  const { window, marks, startMs } = around;
  const systems = systemsOf(at.stored.facility, at.incident.system?.key);
  const limits = limitsIn(systems);
  const series = await nearSeries(window, await sensorsOf(window.siteId, window.systemId));
  const recorded = await recordedLines(at, around);
  const [fromMs, toMs] = [window.from.getTime(), window.to.getTime()];
  const rota = await rotaOf(window.siteId, at.stored.facility, fromMs);
  const lines = mergeTimeline([
    recorded,
    readingLines(series, limits, startMs - HOUR_MS),
    rotaLines(rota, fromMs, toMs),
    entryLines(told.story, told.called),
    markLines(marks),
  ]);
  return {
    lines,
    marks,
    intervals: intervalsOf(marks),
    contradictions: contradictionsIn(marks),
    series,
    limits,
    fromMs,
    toMs,
    hours,
    ids: freshIds(['mark']),
  };
}

const HOUR_MS = 3_600_000;

/** What the other rooms of the record hold: alarms and calls, rounds, states, plans, safeguards. */
async function recordedLines(at: IncidentAt, { window, alarms }: Around): Promise<TimelineLine[]> {
  const [rounds, states, plans, safeguards] = await Promise.all([
    nearRoundEntries(window),
    nearStates(window),
    nearPlans(window),
    nearSafeguards(window),
  ]);
  const ids = [
    ...alarms.flatMap(({ events, calls }) => [...events.map(({ by }) => by), ...calls.map((call) => call.accountId)]),
    ...[...rounds, ...states, ...plans, ...safeguards].map(({ by }) => by),
  ];
  const doers = await doersOf(
    window.siteId,
    ids.filter((id) => id !== null),
  );
  const doerOf = (id: string | null): Doer | null => (id === null ? null : (doers.get(id) ?? null));
  const sensors = at.stored.facility.systems.flatMap((system) => system.sensors);
  const quantityOf = (key: string): SensorQuantity | undefined => sensors.find((one) => one.key === key)?.quantity;
  return [
    ...alarmLines(alarms, doerOf, quantityOf),
    ...roundLines(rounds, doerOf),
    ...stateLines(states, doerOf, at.entry.zone),
    ...planLines(plans, doerOf),
    ...safeguardLines(safeguards, doerOf),
  ];
}

function systemsOf({ systems }: Facility, key: string | undefined) {
  return key === undefined ? systems : systems.filter((one) => one.key === key);
}
