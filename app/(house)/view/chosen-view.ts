import { cookies } from 'next/headers';
import type { Custom } from '#core/units/shown';
import { type Light, lightOf, unitsOf } from '#ui/frame/view-choices';

/** Cookies that keep how a person wants to see the pages. */
export const UNITS_COOKIE = 'holdfast-units';
export const LIGHT_COOKIE = 'holdfast-light';

/** The units and the light a person has chosen; metric, and as their device has it, until they choose. */
export async function chosenView(): Promise<{ units: Custom; light: Light }> {
  const jar = await cookies();
  return {
    units: unitsOf(jar.get(UNITS_COOKIE)?.value) ?? 'metric',
    light: lightOf(jar.get(LIGHT_COOKIE)?.value) ?? 'device',
  };
}
