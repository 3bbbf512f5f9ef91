'use server';

import { cookies } from 'next/headers';
import { lightOf, unitsOf } from '#ui/frame/view-choices';
import { LIGHT_COOKIE, UNITS_COOKIE } from './chosen-view';

const YEAR_S = 31_536_000;

/** Keeps a choice of units or of light with the person's browser. */
export async function chooseView(form: FormData): Promise<void> {
  const jar = await cookies();
  const options = { path: '/', maxAge: YEAR_S, sameSite: 'lax', httpOnly: true } as const;
  const units = unitsOf(form.get('units'));
  const light = lightOf(form.get('light'));
  if (units) jar.set(UNITS_COOKIE, units, options);
  if (light) jar.set(LIGHT_COOKIE, light, options);
}
