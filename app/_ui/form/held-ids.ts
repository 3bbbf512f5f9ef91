'use client';

import { useState } from 'react';
import { type Held, heldAfter, type Ids } from '#core/forms/held';
import type { FormAnswer } from './answer';

/**
 * The ids under which a form is carried out: those it was first drawn with until it is done, however often the page is drawn
 * anew meanwhile.
 *
 * @param given    those the page has now
 * @param answer   the last answer of the form
 */
export function useHeldIds(given: Ids, answer: FormAnswer<unknown> | null): Ids {
  const [held, setHeld] = useState<Held>({ ids: given, after: null });
  const next = heldAfter(held, given, answer);
  if (next !== held) setHeld(next);
  return next.ids;
}
