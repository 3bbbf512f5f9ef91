import 'server-only';
import type { Entry } from '#core/incidents/incident';
import { type Signing, signingOf } from '#core/incidents/state';
import { standing, storyOf } from '#core/incidents/story';
import type { Doer } from '#core/incidents/timeline';
import { ok, type Result, refused } from '#core/result';
import { entriesOf } from '#data/incidents/entries';
import { findIncident, type IncidentRow } from '#data/incidents/incidents';
import { doersOf } from '#data/incidents/people';
import { thingNames } from '#data/records/thing-names';
import type { IncidentPlace } from '#shape/incidents/place';
import type { Verb } from '../gate/may';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite, type SiteToday } from '../reviews/find-stored-site';

/** An incident with its entries, as every page of it begins. */
export interface IncidentAt extends SiteToday {
  incident: IncidentRow;
  entries: Entry[];
  signing: Signing;
}

/** Finds an incident for somebody who wants to do something there. What they may not see is not found. */
export async function findIncidentAt(
  who: Who,
  verb: Verb,
  { site, number }: IncidentPlace,
): Promise<Result<IncidentAt, Refusal>> {
  const found = await findStoredSite(who, verb, site);
  if (!found.ok) return found;
  const { entry } = found.value;
  const incident = await findIncident(entry.id, number);
  if (!incident) return refused({ why: 'not-found', what: 'incident' });
  const entries = await entriesOf(entry.id, incident.id);
  return ok({ ...found.value, incident, entries, signing: signingOf(entries) });
}

/** One line of the story as a page shows it. */
export interface StoryView {
  entry: Entry;
  who: Doer;
  /** Whether another entry stands in its place. */
  isSuperseded: boolean;
  isAfterSigning: boolean;
}

/** What every page of an incident shows at its top. */
export interface IncidentHead {
  site: { key: string; name: string; zone: string };
  /** ISO date at the site. */
  today: string;
  number: number;
  title: string;
  system: { key: string; name: string } | null;
  /** The occurrence of an alarm it was opened from. */
  alarm: string | null;
  openedMs: number;
  openedBy: Doer;
  state: Signing['state'];
  signedMs: number | null;
  signatures: { as: string; who: Doer; atMs: number }[];
  mayLog: boolean;
  mayInvestigate: boolean;
}

/** The head of an incident, its story, and what the ids in it stand for. */
export async function headOf(
  who: Who,
  { entry: site, today, incident, entries, signing }: IncidentAt,
): Promise<{ head: IncidentHead; story: StoryView[]; called: ReadonlyMap<string, string> }> {
  const doers = await doersOf(site.id, [incident.openedBy, ...entries.map(({ by }) => by)]);
  const doer = (id: string): Doer => doers.get(id) ?? { name: id, role: null };
  const head: IncidentHead = {
    site: { key: site.key, name: site.name, zone: site.zone },
    today,
    number: incident.number,
    title: incident.title,
    system: incident.system,
    alarm: incident.occurrenceId,
    openedMs: incident.openedAt.getTime(),
    openedBy: doer(incident.openedBy),
    state: signing.state,
    signedMs: signing.signedMs,
    signatures: signing.counted.map(({ body, by, atMs }) => ({ as: body.as, who: doer(by), atMs })),
    mayLog: may(who, 'log-incident', site.key),
    mayInvestigate: may(who, 'investigate', site.key),
  };
  const story = storyOf(entries).map(({ entry, supersededBy }) => ({
    entry,
    who: doer(entry.by),
    isSuperseded: supersededBy !== null,
    isAfterSigning: signing.afterwards.has(entry.id),
  }));
  return { head, story, called: await calledIn(site.id, entries) };
}

/** What the ids in the entries stand for: safeguards by their names, actions by what they say. */
async function calledIn(siteId: string, entries: readonly Entry[]): Promise<ReadonlyMap<string, string>> {
  const safeguards = standing(entries, 'safeguard').map(({ body }) => body.safeguard);
  const actions = standing(entries, 'action').map(({ id, body }) => [id, body.text] as const);
  return new Map([...(await thingNames(siteId, safeguards)), ...actions]);
}
