import 'server-only';
import type { Facility } from '#core/facility/facility';
import { noticeWords, reachedBy } from '#core/notices/kinds';
import { accountNames } from '#data/accounts/names';
import { openNotices } from '#data/notices/notices';

/** A notice in plain values; instants are ISO 8601 in UTC. */
export interface NoticeLine {
  id: string;
  kind: string;
  what: string;
  todo: string;
  from: string;
  until: string;
  by: string;
  isInForce: boolean;
  /** The equipment through which it reaches each system. */
  reaches: { system: string; equipment: string[] }[];
}

/** Notices of a site that are in force or still to come. */
export async function noticeLines(siteId: string, { systems }: Facility, at: Date): Promise<NoticeLine[]> {
  const rows = await openNotices(siteId, at);
  const names = await accountNames(rows.map(({ by }) => by));
  return rows.map(({ id, kind, what, todo, from, until, by, systems: keys }) => ({
    ...{ id, what, todo },
    kind: noticeWords(kind).name,
    from: from.toISOString(),
    until: until.toISOString(),
    by: names.get(by) ?? by,
    isInForce: from <= at,
    reaches: reachedBy(systems, kind, keys),
  }));
}
