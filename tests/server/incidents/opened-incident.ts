import { newId } from '#data/new-id';
import type { Who } from '#server/gate/who';
import { logEntry } from '#server/incidents/log-entry';
import { openIncident } from '#server/incidents/open-incident';
import { logRequest } from '#shape/incidents/log-request';
import { openRequest } from '#shape/incidents/place';

/** Somebody with a role at the site `harbour`. */
export function somebody(role: 'viewer' | 'aquarist' | 'lead' | 'manager', id = newId()): Who {
  return { id, name: `A ${role}`, everywhere: null, at: { harbour: role } };
}

/** Opens an incident at `harbour`. @returns its place */
export async function opened(who: Who, more: object = {}): Promise<{ site: string; number: number }> {
  const given = { site: 'harbour', entry: newId(), title: 'Tank too warm', system: 'tank-1', ...more };
  const answer = await openIncident(who, openRequest.parse(given));
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer.value;
}

/** What a form of the log sends. */
export function aLine(place: { site: string; number: number }, more: object = {}) {
  const log = { kind: 'log', text: 'The heater is hot.', source: 'witness' };
  return logRequest.parse({ ...place, entry: newId(), ...log, ...more });
}

/** Writes in the log. @returns the id of the entry */
export async function logged(who: Who, place: { site: string; number: number }, more: object = {}): Promise<string> {
  const line = aLine(place, more);
  const answer = await logEntry(who, line);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return line.entry;
}
