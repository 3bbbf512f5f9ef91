import type { Copy } from '../_support/database';
import type { MailGate } from './mail-gate';

/** What was answered and what that calls for. */
export interface Sent {
  /** Readings answered as stored: value by instant, ms. */
  answered: ReadonlyMap<number, number>;
  /** When the reading was taken that is to raise an alarm, one an alarm, ms. */
  crossings: readonly number[];
}

/** What is wrong after a drill, in words; nothing when all is as it should be. */
export async function whatIsWrong(
  query: Copy['query'],
  siteId: string,
  mail: MailGate,
  { answered, crossings }: Sent,
): Promise<string[]> {
  const { rows: readings } = await query(
    'SELECT (extract(epoch FROM "at") * 1000)::float8 AS "atMs", value FROM reading WHERE site_id = $1 AND revision = 0',
    [siteId],
  );
  const there = new Map<number, number>(readings.map(({ atMs, value }) => [atMs, value]));
  const missing = [...answered].filter(([atMs, value]) => there.get(atMs) !== value).length;
  const { rows: raised } = await query(
    `SELECT (extract(epoch FROM o.began_at) * 1000)::float8 AS "atMs",
            (SELECT count(*)::int FROM alarm_event e WHERE e.site_id = o.site_id AND e.occurrence_id = o.id
                AND e.kind IN ('raised', 'returned')) AS turns,
            (SELECT array_agg(c.id) FROM alarm_call c WHERE c.site_id = o.site_id AND c.occurrence_id = o.id) AS calls
       FROM alarm_occurrence o WHERE o.site_id = $1`,
    [siteId],
  );
  const times = raised.map(({ atMs }) => Number(atMs));
  const told = raised.map(({ calls }) => toldBy(mail, calls ?? []));
  return [
    said(missing, 'readings answered as stored are missing or otherwise'),
    said(readings.length - there.size, 'readings are there twice'),
    said(crossings.filter((atMs) => !times.includes(atMs)).length, 'alarms were missed'),
    said(times.length - new Set(times).size, 'alarms were raised twice'),
    said(
      times.filter((atMs) => !crossings.includes(atMs)).length,
      'alarms were raised of which nothing that was sent tells',
    ),
    said(raised.filter(({ turns }) => turns !== 2).length, 'alarms were not raised once and ended once'),
    said(told.filter((count) => count === 0).length, 'alarms told nobody'),
    said(await count(query, 'reading_arrival'), 'batches of readings were held to no alarm'),
  ].filter((line) => line !== null);
}

/** Messages that the mail server took for an alarm. */
function toldBy({ taken }: MailGate, calls: readonly string[]): number {
  return taken.filter(({ raw }) => calls.some((call) => raw.includes(`<${call}@`))).length;
}

/** How many rows a table has. */
export async function count(query: Copy['query'], table: string): Promise<number> {
  const { rows } = await query(`SELECT count(*)::int AS n FROM ${table}`);
  return rows[0].n;
}

function said(number: number, what: string): string | null {
  return number === 0 ? null : `${number} ${what}`;
}
