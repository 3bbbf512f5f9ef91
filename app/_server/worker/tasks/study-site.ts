import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { studySite } from '../../reviews/study-site';

const Payload = z.object({ site: z.uuid() });

/** Computes what is stale of a site's studies, in the background of everything else. */
export const studySiteTask: Task = async (payload, { abortSignal }) => {
  await studySite(Payload.parse(payload).site, { signal: abortSignal });
};
