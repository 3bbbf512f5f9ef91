import 'server-only';
import { STEPS } from '#core/incidents/incident';
import { ok, type Result } from '#core/result';
import { type SensorRow, sensorsOf } from '#data/incidents/sensors';
import { newId } from '#data/new-id';
import { incidentPlace, type IncidentPlace } from '#shape/incidents/place';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findIncidentAt, headOf, type IncidentHead, type StoryView } from './find-incident-at';

/** The first page of an incident: what is done first, and its log. */
export interface IncidentPage {
  head: IncidentHead;
  story: StoryView[];
  /** What ids in the entries stand for. */
  called: ReadonlyMap<string, string>;
  /** Ids for the next entries: by step, by form, and by the entry that is corrected. */
  ids: Readonly<Record<string, string>>;
  /** Sensors for which a meter can be read. */
  sensors: SensorRow[];
}

export const getIncidentShape = incidentPlace;

/** Forms of the first page beside its steps. */
const FORMS = ['sample', 'measurement', 'log'];

/** An incident by its number. What a person may not see is not found. */
export async function getIncident(who: Who, place: IncidentPlace): Promise<Result<IncidentPage, Refusal>> {
  const found = await findIncidentAt(who, 'read-record', place);
  if (!found.ok) return found;
  const { entry: site, incident, entries } = found.value;
  const [told, sensors] = await Promise.all([headOf(who, found.value), sensorsOf(site.id, incident.systemId)]);
  const ids = freshIds([...STEPS, ...FORMS, ...entries.map(({ id }) => id)]);
  return ok({ ...told, ids, sensors });
}

/** An id for what is written next in each of these places. */
export function freshIds(places: readonly string[]): Record<string, string> {
  return Object.fromEntries(places.map((place) => [place, newId()]));
}
