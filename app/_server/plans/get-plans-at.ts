import 'server-only';
import type { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { ok, type Result } from '#core/result';
import { instantOf, wallClock } from '#core/time/zone';
import { listPlansAt, type PlanThen } from '#data/plans/pieces';
import { planInstant } from '#shape/plans/plan-place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findPlace } from '../reviews/find-place';

export const getPlansAtShape = planInstant;

/** The plans that were in force in a system at some instant. */
export interface PlansAtPage {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  system: System;
  /** What the clocks of the site showed then: ISO date, HH:MM. */
  day: string;
  time: string;
  plans: PlanThen[];
}

/**
 * The plans that were in force in a system when the clocks of its site showed a day and a time; at present when none is
 * given. A time the clocks showed twice means the first, one they leapt over the moment they leapt to.
 */
export async function getPlansAt(
  who: Who,
  { site, system, day, time }: z.output<typeof getPlansAtShape>,
): Promise<Result<PlansAtPage, Refusal>> {
  const place = await findPlace(who, site, system);
  if (!place.ok) return place;
  const { entry, stored, system: found, systemId } = place.value;
  const present = wallClock(entry.zone, now().getTime());
  const asked = { day: day ?? present.date, time: time ?? (day === undefined ? present.time : '00:00') };
  const isNow = day === undefined && time === undefined;
  const at = isNow ? now() : new Date(instantOf(entry.zone, asked.day, asked.time));
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    facility: stored.facility,
    system: found,
    ...asked,
    plans: await listPlansAt(entry.id, systemId, at),
  });
}
