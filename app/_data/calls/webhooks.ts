import 'server-only';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Where the calls of a site are posted. */
export interface CallWebhook {
  id: string;
  url: string;
  /** What is signed with, `whsec_` and base64, sealed. */
  secretSealed: Uint8Array<ArrayBuffer> | null;
  /** The same as it was kept before secrets were sealed; null when it is sealed. One of the two is there. */
  secret: string | null;
  createdAt: Date;
}

/** The webhook of a site; null: none. */
export async function findWebhook(siteId: string): Promise<CallWebhook | null> {
  return await database().callWebhook.findFirst({
    where: { siteId, endedAt: null },
    select: { id: true, url: true, secret: true, secretSealed: true, createdAt: true },
  });
}

/** Ends the webhook of a site. @returns its id; null when there was none */
export async function endWebhook(tx: Transaction, siteId: string, at: Date): Promise<string | null> {
  const [ended] = await tx.callWebhook.updateManyAndReturn({
    where: { siteId, endedAt: null },
    data: { endedAt: at },
    select: { id: true },
  });
  return ended?.id ?? null;
}

/** Has the calls of a site posted to an address. @returns its id */
export async function addWebhook(
  tx: Transaction,
  siteId: string,
  { url, secretSealed, by }: { url: string; secretSealed: Uint8Array<ArrayBuffer>; by: string },
  at: Date,
): Promise<string> {
  const id = newId();
  await tx.callWebhook.create({ data: { siteId, id, url, secretSealed, createdAt: at, createdBy: by } });
  return id;
}

/** Webhooks of every site, ended ones too, whose secret is not sealed. */
export async function unsealedWebhooks(): Promise<{ siteId: string; id: string; secret: string }[]> {
  const rows = await database().callWebhook.findMany({
    where: { secret: { not: null } },
    select: { siteId: true, id: true, secret: true },
  });
  return rows.flatMap(({ secret, ...row }) => (secret === null ? [] : [{ ...row, secret }]));
}

/** Keeps a secret sealed, in place of how it stood. */
export async function sealWebhook(
  { siteId, id }: { siteId: string; id: string },
  secretSealed: Uint8Array<ArrayBuffer>,
): Promise<void> {
  await database().callWebhook.update({ where: { siteId_id: { siteId, id } }, data: { secret: null, secretSealed } });
}
