import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { reviewSite } from '../../reviews/review-site';

const Payload = z.object({ site: z.uuid() });

/** Computes what is stale of a site's reviews. */
export const reviewSiteTask: Task = async (payload, { abortSignal }) => {
  await reviewSite(Payload.parse(payload).site, { signal: abortSignal });
};
