import 'server-only';
import { randomBytes } from 'node:crypto';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addWebhook, endWebhook } from '#data/calls/webhooks';
import { appendRecords } from '#data/records/append-records';
import { inTransaction } from '#data/transaction';
import { callsPlace, webhookRequest } from '#shape/calls/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { NotCalled, outbound } from './outbound';
import { sealSecret } from './webhook-secret';

export const setWebhookShape = webhookRequest;
export const removeWebhookShape = callsPlace;

/** Bytes of what is signed with; Standard Webhooks asks for 24 to 64. */
const SECRET_BYTES = 32;

/**
 * Has the calls of a site posted to an address, in place of the one before.
 *
 * @returns   what they are signed with, which is shown this once
 */
export async function setWebhook(
  who: Who,
  { site: key, url }: z.output<typeof setWebhookShape>,
): Promise<Result<{ secret: string }, Refusal>> {
  const found = await siteFor(who, 'call-webhook', key);
  if (!found.ok) return found;
  try {
    await outbound(url);
  } catch (error) {
    const message = error instanceof NotCalled ? error.message : 'There is no such host.';
    return refused({ why: 'invalid', faults: [{ path: 'url', message }] });
  }
  const siteId = found.value.id;
  const at = now();
  const secret = `whsec_${randomBytes(SECRET_BYTES).toString('base64')}`;
  const sealed = sealSecret(secret);
  if (!sealed.ok) {
    const message = 'cannot be signed for: this machine was started without HOLDFAST_SECRET';
    return refused({ why: 'invalid', faults: [{ path: 'url', message }] });
  }
  await inTransaction(async (tx) => {
    await endWebhook(tx, siteId, at);
    const webhook = await addWebhook(tx, siteId, { url, secretSealed: sealed.value, by: who.id }, at);
    const body = { by: who.id, webhook, host: new URL(url).host };
    await appendRecords(tx, siteId, [{ kind: 'webhook-set', body }], at);
  });
  return ok({ secret });
}

/** Has the calls of a site posted nowhere any more. */
export async function removeWebhook(
  who: Who,
  { site: key }: z.output<typeof removeWebhookShape>,
): Promise<Result<true, Refusal>> {
  const found = await siteFor(who, 'call-webhook', key);
  if (!found.ok) return found;
  const siteId = found.value.id;
  const at = now();
  return await inTransaction(async (tx) => {
    const webhook = await endWebhook(tx, siteId, at);
    if (webhook === null) return refused({ why: 'not-found', what: 'link' });
    await appendRecords(tx, siteId, [{ kind: 'webhook-ended', body: { by: who.id, webhook } }], at);
    return ok(true);
  });
}
