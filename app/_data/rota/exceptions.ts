import 'server-only';
import type { DutyException } from '#core/rota/rota';
import { database } from '../client';
import type { Transaction } from '../transaction';

interface Row {
  siteId: string;
  kind: 'leave' | 'swap';
  person: string;
  from: Date | null;
  to: Date | null;
  takes: string | null;
  shift: string | null;
  date: string | null;
  backShift: string | null;
  backDate: string | null;
}

/**
 * The swaps and leave of sites that were approved and not taken back, in the order in which they were approved. Whatever
 * people, and what shifts are no longer described, drops out.
 *
 * @param since   leave that ended before this, and turns that began more than two days earlier, are left out
 * @param asker   the transaction to ask in; the client itself when left out
 * @returns       by id of the site; nothing of a site without any
 */
export async function findExceptions(
  siteIds: readonly string[],
  since: Date,
  asker: Pick<Transaction, '$queryRaw'> = database(),
): Promise<ReadonlyMap<string, DutyException[]>> {
  const firstDay = new Date(since.getTime() - 2 * 86_400_000).toISOString().slice(0, 10);
  const rows = await asker.$queryRaw<Row[]>`
    SELECT c.site_id AS "siteId", c.kind, p.key AS person, c.from_at AS "from", c.to_at AS "to", t.key AS takes, s.key AS shift,
           c.shift_date AS date, b.key AS "backShift", c.back_date AS "backDate"
      FROM rota_change c
      JOIN rota_change_event e ON e.site_id = c.site_id AND e.change_id = c.id AND e.kind = 'approved'
      JOIN person p ON p.site_id = c.site_id AND p.id = c.person_id AND p.retired_at IS NULL
      LEFT JOIN person t ON t.site_id = c.site_id AND t.id = c.takes_id AND t.retired_at IS NULL
      LEFT JOIN shift s ON s.site_id = c.site_id AND s.id = c.shift_id AND s.retired_at IS NULL
      LEFT JOIN shift b ON b.site_id = c.site_id AND b.id = c.back_shift_id AND b.retired_at IS NULL
     WHERE c.site_id = ANY (${siteIds}::uuid[])
       AND ((c.kind = 'leave' AND c.to_at > ${since}) OR greatest(c.shift_date, c.back_date) >= ${firstDay})
       AND NOT EXISTS (SELECT FROM rota_change_event x
                        WHERE x.site_id = c.site_id AND x.change_id = c.id AND x.kind = 'taken-back')
     ORDER BY e.at, c.id`;
  const found = new Map<string, DutyException[]>();
  for (const row of rows) found.set(row.siteId, [...(found.get(row.siteId) ?? []), ...exceptionsOf(row)]);
  return found;
}

function exceptionsOf({ kind, person, from, to, ...row }: Row): DutyException[] {
  if (kind === 'leave') return from && to ? [{ kind, person, from: from.getTime(), to: to.getTime() }] : [];
  const { takes, shift, date, backShift, backDate } = row;
  if (takes === null) return [];
  const part = from && to ? { from: from.getTime(), to: to.getTime() } : {};
  const swap = (key: string | null, day: string | null, gives: string, takes: string): DutyException[] =>
    key === null || day === null ? [] : [{ kind, shift: key, date: day, gives, takes }];
  const given = swap(shift, date, person, takes).map((one) => ({ ...one, ...part }));
  return [...given, ...swap(backShift, backDate, takes, person)];
}
