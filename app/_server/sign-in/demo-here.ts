import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { listDemoSites } from '#data/sites';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';

/** Nothing has to be said to ask whether this is a demonstration. */
export const demoHereShape = z.undefined();

/** Whether a site of the demonstration is there: said to anybody, so that nobody takes what they sign in to for real. */
export async function demoHere(_visit: Visit): Promise<Result<{ isDemo: boolean }, Refusal>> {
  return ok({ isDemo: (await listDemoSites()).length > 0 });
}
