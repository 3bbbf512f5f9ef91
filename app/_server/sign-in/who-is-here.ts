import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { listDemoSites } from '#data/sites';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

/** Nothing has to be said to ask who one is. */
export const whoIsHereShape = z.undefined();

/** What stands at the head of every page. */
export interface Here {
  name: string;
  /** Whether a site they may see is of the demonstration. */
  isDemo: boolean;
}

/** Who is signed in, and whether what they see is of the demonstration. */
export async function whoIsHere(who: Who): Promise<Result<Here, Refusal>> {
  const demo = await listDemoSites();
  return ok({ name: who.name, isDemo: demo.some((key) => may(who, 'see', key)) });
}
