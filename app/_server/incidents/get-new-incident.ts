import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { wallClock } from '#core/time/zone';
import type { z } from 'zod';
import { findOccurrence } from '#data/incidents/occurrence';
import { newId } from '#data/new-id';
import { newIncidentPlace } from '#shape/incidents/place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';

/** The empty form of an incident, with what is known already. */
export interface NewIncidentPage {
  site: { key: string; name: string; zone: string };
  systems: { key: string; name: string }[];
  /** The alarm it is opened from. */
  alarm: { id: string; name: string; system: string; raisedMs: number } | null;
  /** Key of the system it starts with; empty for the whole site. */
  system: string;
  title: string;
  /** When it began, as a clock of the site shows it; empty where nothing is known. */
  began: string;
  /** The present minute, as a clock of the site shows it. */
  now: string;
  entry: string;
}

export const getNewIncidentShape = newIncidentPlace;

/** What an incident is opened with: from an alarm its system and since when it held. */
export async function getNewIncident(
  who: Who,
  { site: key, alarm, system }: z.output<typeof newIncidentPlace>,
): Promise<Result<NewIncidentPage, Refusal>> {
  const found = await findStoredSite(who, 'log-incident', key);
  if (!found.ok) return found;
  const { entry: site, stored } = found.value;
  const occurrence = alarm === undefined ? null : await findOccurrence(site.id, alarm);
  if (alarm !== undefined && !occurrence) return refused({ why: 'not-found', what: 'alarm' });
  const systems = stored.facility.systems.map(({ key: own, name }) => ({ key: own, name }));
  const chosen = system ?? occurrence?.system.key ?? '';
  const minute = (at: Date) => {
    const { date, time } = wallClock(site.zone, at.getTime());
    return `${date}T${time}`;
  };
  return ok({
    site: { key, name: site.name, zone: site.zone },
    systems,
    alarm: occurrence && {
      id: occurrence.id,
      name: occurrence.alarm.name,
      system: occurrence.system.name,
      raisedMs: occurrence.raisedAt.getTime(),
    },
    system: systems.some((one) => one.key === chosen) ? chosen : '',
    title: occurrence ? `${occurrence.alarm.name}, ${occurrence.system.name}` : '',
    began: occurrence ? minute(occurrence.beganAt) : '',
    now: minute(now()),
    entry: newId(),
  });
}
