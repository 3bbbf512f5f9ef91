import 'server-only';
import { z } from 'zod';
import type { Often } from '#core/alarms/performance/nuisance';
import { DAY_MS } from '#core/alarms/performance/raise';
import { type Performance, performanceOf } from '#core/alarms/performance/report';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { listRaises } from '#data/alarms/raises';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** An alarm by name, and how often. */
export interface NamedOften extends Often {
  name: string;
  system: string;
}

type Lists = 'chattering' | 'fleeting' | 'stale' | 'top';

/** How the alarms of a site did. Instants in ms. */
export interface PerformancePage {
  site: { key: string; name: string; zone: string };
  days: number;
  fromMs: number;
  toMs: number;
  figures: Omit<Performance, Lists | 'answerers'> &
    Record<Lists, NamedOften[]> & { answerers: (Performance['answerers'][number] & { name: string })[] };
}

/** Days that are looked at: the standard asks for thirty at least. */
const DAYS = 30;

export const getPerformanceShape = z.object({ site: z.string() });

/** How the alarms of a site did over the past thirty days, with the figures that the standard asks for. */
export async function getPerformance(
  who: Who,
  { site: key }: z.output<typeof getPerformanceShape>,
): Promise<Result<PerformancePage, Refusal>> {
  const found = await siteFor(who, 'see', key);
  if (!found.ok) return found;
  const { id, name, zone } = found.value;
  const toMs = now().getTime();
  const fromMs = toMs - DAYS * DAY_MS;
  const raises = await listRaises(id, new Date(fromMs), new Date(toMs));
  const performance = performanceOf(raises, { fromMs, toMs }, zone);
  const names = await accountNames(performance.answerers.map(({ account }) => account));
  const known = new Map(raises.map((raise) => [raise.alarm, raise]));
  const named = (all: Often[]): NamedOften[] =>
    all.map((one) => ({ ...one, name: known.get(one.alarm)?.name ?? '', system: known.get(one.alarm)?.system ?? '' }));
  return ok({
    site: { key, name, zone },
    days: DAYS,
    fromMs,
    toMs,
    figures: {
      ...performance,
      chattering: named(performance.chattering),
      fleeting: named(performance.fleeting),
      stale: named(performance.stale),
      top: named(performance.top),
      answerers: performance.answerers.map((one) => ({ ...one, name: names.get(one.account) ?? 'somebody' })),
    },
  });
}
