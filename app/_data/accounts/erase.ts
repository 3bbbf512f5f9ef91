import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import type { Transaction } from '../transaction';
import { endAccount } from './accounts';
import { ERASED } from '../facility/names';
import { noteEvent } from './events';

/**
 * Erases what somebody is called at a site: in its rota, beside tests they did and safeguards they took off. The key by which
 * the rota names them gives way to one that says nothing, since keys are made of names.
 *
 * @returns   whether the site told their name anywhere
 */
export async function eraseNamesAt(tx: Transaction, siteId: string, accountId: string): Promise<boolean> {
  const people = await tx.$queryRaw<{ id: string; key: string }[]>`
    SELECT p.id, p.key FROM person p JOIN membership m ON m.site_id = p.site_id AND m.person_id = p.id
     WHERE m.site_id = ${siteId}::uuid AND m.account_id = ${accountId}::uuid`;
  for (const person of people) await eraseKey(tx, siteId, person);
  await eraseAttester(tx, siteId, accountId);
  const erased = await tx.$executeRaw`
    UPDATE person_name n SET name = NULL
      FROM membership m JOIN account a ON a.id = m.account_id
      LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id
     WHERE m.site_id = ${siteId}::uuid AND m.account_id = ${accountId}::uuid AND n.site_id = m.site_id
       AND n.name IS NOT NULL AND (n.id = p.name_id OR n.name = a.name)`;
  return people.length + erased > 0;
}

/** Whoever attested what somebody else may do stands beside it by name. */
async function eraseAttester(tx: Transaction, siteId: string, accountId: string): Promise<void> {
  await tx.$executeRaw`
    UPDATE person held SET detail = jsonb_set(held.detail, '{competences}',
           (SELECT jsonb_agg(CASE one->>'attestedBy' WHEN known.name THEN one || jsonb_build_object('attestedBy', ${ERASED}::text)
                                                     ELSE one END ORDER BY at)
              FROM jsonb_array_elements(held.detail->'competences') WITH ORDINALITY AS each (one, at)))
      FROM (SELECT coalesce(n.name, a.name) AS name
              FROM membership m JOIN account a ON a.id = m.account_id
              LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id
              LEFT JOIN person_name n ON n.site_id = m.site_id AND n.id = p.name_id
             WHERE m.site_id = ${siteId}::uuid AND m.account_id = ${accountId}::uuid) known
     WHERE held.site_id = ${siteId}::uuid
       AND held.detail->'competences' @> jsonb_build_array(jsonb_build_object('attestedBy', known.name))`;
}

/** Alarms and the outside watch name by key who answers them; shifts do by id. */
async function eraseKey(tx: Transaction, siteId: string, { id, key }: { id: string; key: string }): Promise<void> {
  const empty = `erased-${id.slice(-12)}`;
  await tx.$executeRaw`UPDATE person SET key = ${empty} WHERE site_id = ${siteId}::uuid AND id = ${id}::uuid`;
  const inPlace = (list: Prisma.Sql) => Prisma.sql`
    (SELECT jsonb_agg(CASE k WHEN ${key} THEN ${empty} ELSE k END ORDER BY at)
       FROM jsonb_array_elements_text(${list}) WITH ORDINALITY AS one (k, at))`;
  const inAlarm = Prisma.sql`detail->'answeredBy'`;
  const inWatch = Prisma.sql`detail->'watchdog'->'answeredBy'`;
  await tx.$executeRaw`
    UPDATE alarm_definition SET detail = jsonb_set(detail, '{answeredBy}', ${inPlace(inAlarm)})
     WHERE site_id = ${siteId}::uuid AND ${inAlarm} @> to_jsonb(ARRAY[${key}])`;
  await tx.$executeRaw`
    UPDATE site SET detail = jsonb_set(detail, '{watchdog,answeredBy}', ${inPlace(inWatch)})
     WHERE id = ${siteId}::uuid AND ${inWatch} @> to_jsonb(ARRAY[${key}])`;
}

/**
 * Erases who an account belonged to: name and address, what they signed in by, what their browsers called themselves. What
 * they did stays in the record, which holds their id alone.
 *
 * @param by   account that does it, or `local`
 */
export async function eraseAccount(tx: Transaction, accountId: string, by: string, at: Date): Promise<void> {
  await endAccount(tx, accountId, by, at);
  await tx.passkey.deleteMany({ where: { accountId } });
  await tx.passkeyChallenge.deleteMany({ where: { accountId } });
  await tx.outsideIdentity.deleteMany({ where: { accountId } });
  await tx.oneTimeLink.deleteMany({ where: { accountId } });
  await tx.session.updateMany({ where: { accountId }, data: { browser: '' } });
  await tx.account.update({ where: { id: accountId }, data: { name: null, email: null, passwordHash: null } });
  await noteEvent(tx, { kind: 'account-erased', accountId, by }, at);
}
