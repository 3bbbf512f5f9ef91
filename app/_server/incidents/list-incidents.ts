import 'server-only';
import { actionsOf } from '#core/incidents/actions';
import { type IncidentState, signingOf } from '#core/incidents/state';
import { standing } from '#core/incidents/story';
import { ok, type Result } from '#core/result';
import type { z } from 'zod';
import { entriesOfSite } from '#data/incidents/entries';
import { listIncidentRows } from '#data/incidents/incidents';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';

/** One incident of a list. */
export interface IncidentLine {
  number: number;
  title: string;
  /** Null for the whole site. */
  system: { key: string; name: string } | null;
  openedMs: number;
  /** When it began, as far as somebody said. */
  beganMs: number | null;
  state: IncidentState;
  openActions: number;
  lateActions: number;
}

/** The incidents of a site. */
export interface IncidentList {
  site: { key: string; name: string; zone: string };
  lines: IncidentLine[];
  mayOpen: boolean;
}

export const listIncidentsShape = sitePlace;

/** Every incident of a site, the newest first. */
export async function listIncidents(
  who: Who,
  { site: key }: z.output<typeof sitePlace>,
): Promise<Result<IncidentList, Refusal>> {
  const found = await siteFor(who, 'read-record', key);
  if (!found.ok) return found;
  const { id, name, zone } = found.value;
  const [rows, entries] = await Promise.all([listIncidentRows(id), entriesOfSite(id)]);
  const today = dayIn(zone, now());
  const lines = rows.map(({ id: incident, number, title, system, openedAt }): IncidentLine => {
    const own = entries.get(incident) ?? [];
    const open = actionsOf(own, today).filter(({ done }) => done === null);
    const began = standing(own, 'mark').findLast(({ body }) => body.mark === 'fault-began');
    return {
      number,
      title,
      system,
      openedMs: openedAt.getTime(),
      beganMs: began?.atMs ?? null,
      state: signingOf(own).state,
      openActions: open.length,
      lateActions: open.filter(({ isLate }) => isLate).length,
    };
  });
  return ok({ site: { key, name, zone }, lines, mayOpen: may(who, 'log-incident', key) });
}
