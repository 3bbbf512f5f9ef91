import type { Facility } from '#core/facility/facility';
import { onNow } from '#core/rota/on-now';
import { randomOf } from './random';

/** Somebody who is in the house at a moment, else whoever is on call, else whoever stands first in the rota. */
export function onShift(facility: Facility, atMs: number, ...words: readonly string[]): string {
  const on = onNow({ ...facility, exceptions: [] }, atMs);
  const here = on.filter(({ kind }) => kind === 'on-site');
  const list = here.length > 0 ? here : on;
  return list.length > 0 ? randomOf('on shift', ...words).one(list).person : (facility.people[0]?.key ?? '');
}
