import 'server-only';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Where the calls of a site are posted. */
export interface CallWebhook {
  id: string;
  url: string;
  /** `whsec_` and base64. */
  secret: string;
  createdAt: Date;
}

/** The webhook of a site; null: none. */
export async function findWebhook(siteId: string): Promise<CallWebhook | null> {
  return await database().callWebhook.findFirst({
    where: { siteId, endedAt: null },
    select: { id: true, url: true, secret: true, createdAt: true },
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
  { url, secret, by }: { url: string; secret: string; by: string },
  at: Date,
): Promise<string> {
  const id = newId();
  await tx.callWebhook.create({ data: { siteId, id, url, secret, createdAt: at, createdBy: by } });
  return id;
}
