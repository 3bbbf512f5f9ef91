import 'server-only';
import type { Target } from '#core/calibration/target';
import type { Draft, DraftGroup } from '#core/forms/field';
import { ok, type Result, refused } from '#core/result';
import type { CalibrationRequest } from '#shape/calibration/calibration-place';
import type { EditRequest } from '#shape/describe/edit';
import { draftOf } from '#shape/form/draft-of';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findThing, formOfFacility } from '../describe/find-thing';
import { thingFields } from '../describe/thing-fields';
import { dayIn } from '../local-day';
import { findStoredSite, type SiteToday } from '../reviews/find-stored-site';
import { workingOf } from './get-calibration';
import { type WorkedOut, workOut } from './work-out';

/** Part of a figure by which it may have changed since it was looked at, so that nothing else is taken than what was seen. */
const SAME = 1e-6;
const DAY_MS = 86_400_000;

/**
 * What was found, worked out anew from the same readings, as a change of the description that can be looked at and kept like
 * any other: the figure is measured, its range is the interval, its source says which readings.
 *
 * @returns   conflict where it is no longer what the person saw: readings came in, or the description changed
 */
export async function takeOver(who: Who, asked: CalibrationRequest): Promise<Result<EditRequest, Refusal>> {
  const found = await findStoredSite(who, 'describe', asked.site);
  if (!found.ok) return found;
  const system = found.value.stored.facility.systems.find(({ key }) => key === asked.system);
  if (!system) return refused({ why: 'not-found', what: 'system' });
  const worked = await workOut(asked.is, await workingOf(found.value, system, asked));
  const { target } = worked;
  if (!target || !isWhatWasSeen(target, asked)) return refused({ why: 'conflict', now: changed(worked) });
  return editOf(found.value, asked, worked, target);
}

function isWhatWasSeen(target: Target, asked: CalibrationRequest): boolean {
  const isNear = (one: number, other: number) => Math.abs(one - other) <= SAME * Math.max(1e-9, Math.abs(one));
  return isNear(target.value, asked.value) && isNear(target.low, asked.low) && isNear(target.high, asked.high);
}

function changed({ target, refused: why }: WorkedOut): string {
  const now = target ? `Now they say ${target.value} (${target.low} to ${target.high}).` : why.join(' ');
  return `The readings no longer say what you saw: some came in since, or the description changed. ${now} Look at the page again.`;
}

function editOf(
  { entry, stored, today }: SiteToday,
  asked: CalibrationRequest,
  worked: WorkedOut,
  { noun, key, field, value, low, high }: Target,
): Result<EditRequest, Refusal> {
  const { facility } = stored;
  const system = facility.systems.find((one) => one.key === asked.system) ?? null;
  const held = findThing(formOfFacility(facility), { noun, system: asked.system, key })?.held;
  if (!held) return refused({ why: 'not-found', what: 'thing' });
  const fields = thingFields(noun, 'change', { facility, system, custom: 'metric' });
  const shown = draftOf(fields, held, 'metric');
  const from = dayIn(entry.zone, new Date(asked.untilMs - asked.days * DAY_MS));
  const to = asked.untilMs > 0 ? dayIn(entry.zone, new Date(asked.untilMs)) : today;
  const many = worked.stretches.filter((one) => !one.isLeftOut && (one.value !== null || one.sd === null)).length;
  const source = `fitted from readings of ${from} to ${to} (${[...worked.from, `${many} stretches`].join(', ')})`;
  const figure: Draft = { value: String(value), from: 'measured', low: String(low), high: String(high), source };
  return ok({
    site: asked.site,
    act: 'change',
    noun,
    system: asked.system,
    key,
    shown,
    draft: { ...withoutWall(shown, field), [field]: figure },
    units: 'metric',
    why: asked.why,
  });
}

/** Walls say how much heat is lost as well: the file takes one of the two. */
function withoutWall(shown: DraftGroup, field: Target['field']): DraftGroup {
  const { wall: _wall, ...rest } = shown;
  return field === 'lossWPerK' ? rest : shown;
}
