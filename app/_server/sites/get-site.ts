import 'server-only';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { countOpenAlarms } from '#data/alarms/told';
import { findSite } from '#data/sites';
import { LEAST, may, type Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

/** A site, and what the person who asks may do there. */
export interface SitePage {
  key: string;
  name: string;
  /** IANA zone. */
  zone: string;
  allowed: Verb[];
  /** Alarms that want something. */
  openAlarms: number;
}

export const getSiteShape = z.object({ site: z.string() });

const VERBS = Object.keys(LEAST) as Verb[];

/** A site by its key. What a person may not see is not found. */
export async function getSite(who: Who, { site }: z.output<typeof getSiteShape>): Promise<Result<SitePage, Refusal>> {
  const entry = may(who, 'see', site) ? await findSite(site) : null;
  if (!entry) return refused({ why: 'not-found', what: 'site' });
  const { id, key, name, zone } = entry;
  const openAlarms = await countOpenAlarms(id);
  return ok({ key, name, zone, openAlarms, allowed: VERBS.filter((verb) => may(who, verb, key)) });
}
