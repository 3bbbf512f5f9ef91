import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** Somebody's role at a site, which they have or had. */
export interface Member {
  accountId: string;
  role: Role;
  since: Date;
  /** When their access ended; null while they have it. */
  endedAt: Date | null;
  /** Null once erased. */
  name: string | null;
  email: string | null;
  isDemo: boolean;
  /** Whether they may sign in at all. */
  isEnded: boolean;
  /** The person of the rota they are, if any. */
  person: { id: string; key: string } | null;
}

/** Everybody who has or had a role at a site, those who have one first, by name. */
export async function listMembers(siteId: string): Promise<Member[]> {
  return await database().$queryRaw<Member[]>`
    SELECT m.account_id AS "accountId", m.role, m.since, m.ended_at AS "endedAt", a.name, a.email, a.is_demo AS "isDemo",
           a.ended_at IS NOT NULL AS "isEnded",
           CASE WHEN p.id IS NULL THEN NULL ELSE jsonb_build_object('id', p.id, 'key', p.key) END AS person
      FROM membership m JOIN account a ON a.id = m.account_id
      LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id AND p.retired_at IS NULL
     WHERE m.site_id = ${siteId}::uuid
     ORDER BY m.ended_at IS NOT NULL, lower(coalesce(a.name, a.email, '')), m.account_id`;
}

/** A role that somebody has, as it is changed. */
export interface Held {
  accountId: string;
  role: Role;
  personId: string | null;
  /** Whether they may not sign in at all. */
  isEnded: boolean;
}

/**
 * Everybody who has a role at a site, held until the transaction ends: whoever changes one waits for whoever came before,
 * so that of two last administrators who let each other go, one stays.
 */
export async function holdMembers(tx: Transaction, siteId: string): Promise<Held[]> {
  // Members who come meanwhile are no matter: none of them goes.
  return await tx.$queryRaw<Held[]>`
    SELECT m.account_id AS "accountId", m.role, m.person_id AS "personId", a.ended_at IS NOT NULL AS "isEnded"
      FROM membership m JOIN account a ON a.id = m.account_id
     WHERE m.site_id = ${siteId}::uuid AND m.ended_at IS NULL ORDER BY m.account_id FOR UPDATE OF m`;
}

/** Whether somebody looks after every site as its administrator, whatever becomes of the members of one. */
export async function hasAdminEverywhere(tx: Transaction): Promise<boolean> {
  return (await tx.account.count({ where: { everywhere: 'admin', endedAt: null } })) > 0;
}

/** Gives somebody a role at a site; one who had left comes back. */
export async function giveRole(
  tx: Transaction,
  { siteId, accountId, role }: { siteId: string; accountId: string; role: Role },
  at: Date,
): Promise<void> {
  await tx.membership.upsert({
    where: { siteId_accountId: { siteId, accountId } },
    create: { siteId, accountId, role, since: at },
    update: { role, since: at, endedAt: null },
  });
}

/** Changes what is said of somebody who has a role at a site. */
export async function changeMember(
  tx: Transaction,
  { siteId, accountId }: { siteId: string; accountId: string },
  change: { role?: Role; personId?: string | null; endedAt?: Date },
): Promise<void> {
  await tx.membership.update({ where: { siteId_accountId: { siteId, accountId } }, data: change });
}

/** Whether somebody has a role at a site other than this one, or at every one. */
export async function hasRoleElsewhere(tx: Transaction, accountId: string, siteId: string): Promise<boolean> {
  if ((await tx.membership.count({ where: { accountId, endedAt: null, siteId: { not: siteId } } })) > 0) return true;
  return (await tx.account.count({ where: { id: accountId, everywhere: { not: null } } })) > 0;
}

/** Sites somebody has, or had, a role at. */
export async function sitesOf(accountId: string): Promise<string[]> {
  const rows = await database().membership.findMany({ where: { accountId }, orderBy: { siteId: 'asc' } });
  return rows.map(({ siteId }) => siteId);
}

/** Those with a role at every site. */
export async function listEverywhere(): Promise<{ accountId: string; name: string | null; role: Role }[]> {
  const rows = await database().account.findMany({
    where: { everywhere: { not: null }, endedAt: null },
    select: { id: true, name: true, everywhere: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ id, name, everywhere }) => ({ accountId: id, name, role: everywhere as Role }));
}

/** The persons of a site's rota. */
export async function listRotaPeople(siteId: string): Promise<{ id: string; key: string; name: string | null }[]> {
  const people = await database().person.findMany({
    where: { siteId, retiredAt: null },
    select: { id: true, key: true, name: { select: { name: true } } },
    orderBy: { ordinal: 'asc' },
  });
  return people.map(({ name, ...person }) => ({ ...person, name: name.name }));
}
