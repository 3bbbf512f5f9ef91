import 'server-only';
import { type Mark, marksOf, type Proposal } from '#core/incidents/marks';
import { standing } from '#core/incidents/story';
import { type NearAlarm, nearAlarms } from '#data/incidents/near-alarms';
import { findOccurrence } from '#data/incidents/occurrence';
import type { Window } from '#data/incidents/window';
import { now } from '../clock';
import type { IncidentAt } from './find-incident-at';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Hours before the beginning that are shown unless somebody asks for more. Common practice, no source. */
export const USUAL_HOURS = 6;
/** Hours after the last thing that was done, and days at most. Common practice, no source. */
const AFTER_HOURS = 6;
const MOST_DAYS = 14;
/** Hours before it was opened in which its alarms are looked for, where nobody said when it began. */
const LOOKED_BACK_HOURS = 12;

/** An incident and the alarms round it: the window that is looked at, and the marks that follow. */
export interface Around {
  window: Window;
  /** When it began, as far as known, ms. */
  startMs: number;
  alarms: NearAlarm[];
  marks: Mark[];
}

/** The window of an incident, the alarms in it, and its marks. @param hours before it began */
export async function aroundIncident(at: IncidentAt, hours: number): Promise<Around> {
  const { entry: site, incident, entries } = at;
  const linked = incident.occurrenceId ? await findOccurrence(site.id, incident.occurrenceId) : null;
  const entered = marksOf(entries, []);
  const opened = incident.openedAt.getTime();
  const began = entered.find(({ mark }) => mark === 'fault-began')?.atMs ?? linked?.beganAt.getTime();
  const startMs = began ?? opened;
  const alarmsFrom = began === undefined ? opened - LOOKED_BACK_HOURS * HOUR_MS : began - HOUR_MS;
  const from = new Date(Math.min(startMs - hours * HOUR_MS, alarmsFrom));
  const to = new Date(endOf(at, entered, startMs));
  const window: Window = { siteId: site.id, systemId: incident.systemId, from, to };
  const alarms = await nearAlarms(window);
  const ours = alarms.filter(({ id, raisedAt }) => id === linked?.id || raisedAt.getTime() >= alarmsFrom);
  return { window, startMs, alarms, marks: marksOf(entries, proposalsFrom(ours)) };
}

function endOf({ entries }: IncidentAt, marks: readonly Mark[], startMs: number): number {
  const over = marks.find(({ mark }) => mark === 'stood-down') ?? marks.find(({ mark }) => mark === 'normal');
  const done = (['step', 'sample', 'measurement', 'log', 'loss'] as const).flatMap((kind) =>
    standing(entries, kind).map(({ atMs }) => atMs),
  );
  const last = Math.max(startMs, ...marks.map(({ atMs }) => atMs), over?.atMs ?? 0, ...(over ? [] : done));
  return Math.min(last + AFTER_HOURS * HOUR_MS, startMs + MOST_DAYS * DAY_MS, now().getTime() + 1);
}

/** What the alarms say of the marks. All is normal again when every alarm has returned, and with the last of them. */
function proposalsFrom(alarms: readonly NearAlarm[]): Proposal[] {
  const device = { source: 'device' } as const;
  const events = alarms.flatMap((alarm) => alarm.events.map((event) => ({ ...event, name: alarm.alarm.name })));
  const tries = alarms.flatMap((alarm) =>
    alarm.calls.flatMap(({ attempts }) => attempts.map((one) => ({ ...one, name: alarm.alarm.name }))),
  );
  const returned = events.filter(({ kind }) => kind === 'returned');
  const last = returned.reduce<number | null>((latest, { at }) => Math.max(latest ?? 0, at.getTime()), null);
  return [
    ...alarms.flatMap(({ alarm, beganAt, raisedAt }): Proposal[] => [
      { ...device, mark: 'first-abnormal', atMs: beganAt.getTime(), from: `since when alarm “${alarm.name}” held` },
      { ...device, mark: 'first-alarm', atMs: raisedAt.getTime(), from: `alarm “${alarm.name}” was raised` },
    ]),
    ...tries
      .filter(({ result }) => result === 'taken')
      .map(({ at, name }): Proposal => ({ ...device, mark: 'told', atMs: at.getTime(), from: `a call of “${name}”` })),
    ...events
      .filter(({ kind }) => kind === 'acknowledged')
      .map(
        ({ at, name }): Proposal => ({ ...device, mark: 'acknowledged', atMs: at.getTime(), from: `alarm “${name}”` }),
      ),
    ...(last !== null && returned.length === alarms.length
      ? [{ ...device, mark: 'normal' as const, atMs: last, from: 'the last of its alarms returned' }]
      : []),
  ];
}
