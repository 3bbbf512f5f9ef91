import 'server-only';
import { z } from 'zod';
import { linesOf, SECTIONS, type Shown } from '#core/handover/shown';
import { ok, type Result, refused } from '#core/result';
import { type EndedWatchRow, endedAnimalWatches, openAnimalWatches } from '#data/handover/animal-watches';
import { findHandover, type HandoverRow, listHandovers } from '#data/handover/handovers';
import { namesOf } from '#data/handover/names';
import { newId } from '#data/new-id';
import { handoverPlace } from '#shape/handover/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { digestOf } from './digest';
import { gatherShown } from './gather';

/** A handover as a list or its own page tells it; instants are ISO 8601 in UTC. */
export interface HandoverLine {
  id: string;
  at: string;
  by: string;
  note: string | null;
  digest: string;
  taken: { at: string; by: string; how: 'session' | 'password'; note: string | null } | null;
  /** Whether whoever asks gave it. */
  isOwn: boolean;
}

/** A watch of animals that was ended lately; instants are ISO 8601 in UTC. */
export interface EndedWatch {
  id: string;
  what: string;
  at: string;
  by: string;
  note: string;
  /** That the end was taken back, and they are watched again; null while it counts. */
  taken: { at: string; by: string; reason: string } | null;
}

/** What stands now, for whoever hands over, and the handovers of the past days. */
export interface HandoverPage {
  site: { key: string; name: string; zone: string };
  at: string;
  /** People by name. */
  shown: Shown;
  /** Of what stands, to be sent along when it is handed over. */
  print: string;
  entry: string;
  /** The latest one, while nobody has taken it. */
  open: HandoverLine | null;
  past: HandoverLine[];
  animals: { id: string; what: string }[];
  /** Watches that were ended in the past days, the latest first. */
  ended: EndedWatch[];
  systems: { key: string; name: string }[];
  mayGive: boolean;
}

/** One handover as it was given. */
export interface KeptHandover {
  site: { key: string; name: string; zone: string };
  line: HandoverLine;
  shown: Shown;
  /** Whether what is kept has the digest it was kept with. */
  isWhole: boolean;
  mayTake: boolean;
}

export const getHandoverShape = z.object({ site: z.string() });
export const getKeptHandoverShape = handoverPlace;

/** Handovers that are listed. */
const LISTED = 20;
/** ms that the end of a watch stays in sight, and can be taken back there: a week. Common practice, no source. */
const ENDED_MS = 7 * 86_400_000;

/** What stands at a site, to be handed over. */
export async function getHandover(
  who: Who,
  { site }: z.output<typeof getHandoverShape>,
): Promise<Result<HandoverPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const at = now();
  const shown = await gatherShown(found.value, at);
  const rows = await listHandovers(entry.id, LISTED);
  const ended = await endedAnimalWatches(entry.id, new Date(at.getTime() - ENDED_MS));
  const bySomebody = ended.flatMap(({ end, taken }) => (taken ? [end.by, taken.by] : [end.by]));
  const names = await namesOf(entry.id, [...idsIn(shown), ...rows.flatMap(idsOf), ...bySomebody]);
  const [latest] = rows;
  const animals = await openAnimalWatches(entry.id);
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    at: at.toISOString(),
    shown: named(shown, names),
    print: digestOf(shown),
    entry: newId(),
    open: latest && latest.taken === null ? lineOf(latest, names, who) : null,
    past: rows.map((row) => lineOf(row, names, who)),
    animals: animals.map(({ id, what }) => ({ id, what })),
    ended: ended.map((one) => endedOf(one, names)),
    systems: stored.facility.systems.map(({ key, name }) => ({ key, name })),
    mayGive: may(who, 'hand-over', site),
  });
}

/** One handover as it was given, with its signatures. */
export async function getKeptHandover(
  who: Who,
  { site, handover }: z.output<typeof getKeptHandoverShape>,
): Promise<Result<KeptHandover, Refusal>> {
  const found = await siteFor(who, 'see', site);
  if (!found.ok) return found;
  const { id, key, name, zone } = found.value;
  const row = await findHandover(id, handover);
  if (!row) return refused({ why: 'not-found', what: 'handover' });
  const names = await namesOf(id, [...idsIn(row.shown), ...idsOf(row)]);
  return ok({
    site: { key, name, zone },
    line: lineOf(row, names, who),
    shown: named(row.shown, names),
    isWhole: digestOf(row.shown) === row.digest,
    mayTake: row.taken === null && row.by !== who.id && may(who, 'hand-over', site),
  });
}

function lineOf(
  { id, at, by, note, digest, taken }: HandoverRow,
  names: ReadonlyMap<string, string>,
  who: Who,
): HandoverLine {
  const nameOf = (of: string) => names.get(of) ?? of;
  return {
    ...{ id, note, digest },
    at: at.toISOString(),
    by: nameOf(by),
    taken: taken && { ...taken, at: taken.at.toISOString(), by: nameOf(taken.by) },
    isOwn: by === who.id,
  };
}

function endedOf({ id, what, end, taken }: EndedWatchRow, names: ReadonlyMap<string, string>): EndedWatch {
  const nameOf = (of: string) => names.get(of) ?? of;
  return {
    ...{ id, what, note: end.note },
    at: end.at.toISOString(),
    by: nameOf(end.by),
    taken: taken && { at: taken.at.toISOString(), by: nameOf(taken.by), reason: taken.reason },
  };
}

function idsOf({ by, taken }: HandoverRow): string[] {
  return taken ? [by, taken.by] : [by];
}

function idsIn(shown: Shown): string[] {
  return SECTIONS.flatMap(({ id }) => linesOf(shown, id).flatMap(({ who }) => who));
}

/** The same with people by name. */
function named(shown: Shown, names: ReadonlyMap<string, string>): Shown {
  const sections = SECTIONS.map(({ id }) => [
    id,
    linesOf(shown, id).map((line) => ({ ...line, who: line.who.map((of) => names.get(of) ?? of) })),
  ]);
  return Object.fromEntries(sections) as Shown;
}
