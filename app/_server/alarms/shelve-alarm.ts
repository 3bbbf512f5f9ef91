import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { shelveRequest } from '#shape/alarms/requests';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { changeSuppressed } from './change-suppressed';
import { suppressAlarm } from './suppress-alarm';

export const shelveAlarmShape = shelveRequest;

/** Shelves an alarm: it is judged and kept all the same, and calls nobody until its time is up or somebody ends it. */
export async function shelveAlarm(
  who: Who,
  request: z.output<typeof shelveAlarmShape>,
): Promise<Result<{ site: string }, Refusal>> {
  const site = await siteFor(who, 'shelve-alarm', request.site);
  if (!site.ok) return site;
  const done = await changeSuppressed(site.value.id, (held) =>
    suppressAlarm(held, who, { ...request, kind: 'shelved' }),
  );
  return done.ok ? ok({ site: request.site }) : done;
}
