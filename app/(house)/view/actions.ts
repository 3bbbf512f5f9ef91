'use server';

import { cookies, headers } from 'next/headers';
import { visitOf } from '#server/gate/visit';
import { lightOf, unitsOf } from '#ui/frame/view-choices';
import { LIGHT_COOKIE, UNITS_COOKIE } from './chosen-view';

const YEAR_S = 31_536_000;

/** Keeps a choice of units or of light with the person's browser. */
export async function chooseView(form: FormData): Promise<void> {
  const jar = await cookies();
  const secure = visitOf(await headers())?.origin.isSecure ?? false;
  const options = { path: '/', maxAge: YEAR_S, sameSite: 'lax', httpOnly: true, secure } as const;
  const units = unitsOf(form.get('units'));
  const light = lightOf(form.get('light'));
  if (units) jar.set(UNITS_COOKIE, units, options);
  if (light) jar.set(LIGHT_COOKIE, light, options);
}
