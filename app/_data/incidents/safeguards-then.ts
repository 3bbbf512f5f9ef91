import 'server-only';
import type { SafeguardKind, SafeguardTest } from '#core/plans/safeguard';
import { database } from '../client';
import { asDay } from '../day';
import type { Transaction } from '../transaction';

/** A stretch in which a safeguard was out of service; ISO dates. `backAt`: put back before its end. */
export interface OffThen {
  since: string;
  until: string;
  why: string;
  backAt: Date | null;
}

/** A safeguard with all that is kept of it, whether or not it is still there. */
export interface SafeguardThen {
  id: string;
  /** Null for one of the site itself. */
  systemId: string | null;
  key: string;
  name: string;
  kind: SafeguardKind;
  testEveryDays: number;
  retiredAt: Date | null;
  tests: SafeguardTest[];
  offs: OffThen[];
}

/** Whether a site has, or had, this safeguard. */
export async function isSafeguard(tx: Transaction, siteId: string, id: string): Promise<boolean> {
  return (await tx.safeguard.findUnique({ where: { siteId_id: { siteId, id } }, select: { id: true } })) !== null;
}

/**
 * The safeguards a system could lean on at an instant, its own and the site's, with their tests and the times they were out
 * of service. Of the description of that time; one that was retired since is among them.
 *
 * @param systemId   null for all of the site
 * @param at         the instant
 */
export async function safeguardsThen(siteId: string, systemId: string | null, at: Date): Promise<SafeguardThen[]> {
  const rows = await database().safeguard.findMany({
    where: {
      siteId,
      AND: [
        systemId === null ? {} : { OR: [{ systemId }, { systemId: null }] },
        { OR: [{ retiredAt: null }, { retiredAt: { gt: at } }] },
      ],
    },
    include: { ledger: { where: { withdraws: null }, include: { withdrawnBy: true } } },
    orderBy: [{ systemId: 'asc' }, { ordinal: 'asc' }],
  });
  const offs = await offsOf(
    siteId,
    rows.map(({ id }) => id),
  );
  return rows.map(({ id, key, name, kind, testEveryDays, retiredAt, ledger, systemId: owner }) => ({
    id,
    systemId: owner,
    key,
    name,
    kind: kind as SafeguardKind,
    testEveryDays,
    retiredAt,
    tests: ledger.filter(({ withdrawnBy }) => withdrawnBy.length === 0).map(asTest),
    offs: offs.get(id) ?? [],
  }));
}

function asTest({ testedOn, result }: { testedOn: Date; result: string }): SafeguardTest {
  return { on: asDay(testedOn), result: result === 'worked' ? 'worked' : 'failed' };
}

/** When safeguards were out of service, as the record of the site tells it, oldest first. */
async function offsOf(siteId: string, ids: readonly string[]): Promise<ReadonlyMap<string, OffThen[]>> {
  const rows = await database().$queryRaw<
    { id: string; kind: string; at: Date; since: string; until: string; why: string }[]
  >`
    SELECT body->>'safeguard' AS id, kind, at, body->>'since' AS since, body->>'until' AS until, body->>'why' AS why
      FROM record
     WHERE site_id = ${siteId}::uuid AND kind IN ('safeguard-off', 'safeguard-back')
       AND body->>'safeguard' = ANY (${[...ids]}::text[])
     ORDER BY seq`;
  const found = new Map<string, OffThen[]>();
  for (const { id, kind, at, since, until, why } of rows) {
    const had = found.get(id) ?? [];
    const last = had.at(-1);
    if (kind === 'safeguard-off') found.set(id, [...had, { since, until, why, backAt: null }]);
    else if (last) last.backAt = at;
  }
  return found;
}
