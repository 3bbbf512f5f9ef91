import 'server-only';
import { Webhook } from 'standardwebhooks';
import { findWebhook } from '#data/calls/webhooks';
import { now } from '../clock';
import { failed, type Message, type Recipient, type Sent } from './message';
import { outbound } from './outbound';
import { postOut } from './post-out';
import { secretOf } from './webhook-secret';

/** Tells whatever service a site has behind its webhook that somebody is to be told. */
export async function byWebhook(recipient: Recipient, message: Message): Promise<Sent> {
  const webhook = await findWebhook(recipient.siteId);
  if (!webhook) return { result: 'no-way', detail: 'the webhook was removed' };
  try {
    const { status, said } = await postOut(
      await outbound(webhook.url),
      signedRequest(secretOf(webhook), recipient, message),
    );
    if (status >= 200 && status < 300) return { result: 'taken' };
    return { result: 'failed', detail: `status ${status}${said === '' ? '' : `: ${said}`}`.slice(0, 200) };
  } catch (error) {
    return failed(error, 'the service behind the webhook said nothing');
  }
}

/**
 * What is posted, signed as Standard Webhooks 1.0 says: headers webhook-id, webhook-timestamp and webhook-signature over all
 * three and the body. An attempt that is made again has the same id and body, so that the other side can tell a repeat.
 */
export function signedRequest(
  secret: string,
  { id, madeAt }: Pick<Recipient, 'id' | 'madeAt'>,
  { type, data, short, text, url }: Message,
): { headers: Record<string, string>; body: string } {
  const body = JSON.stringify({ type, timestamp: madeAt.toISOString(), data: { ...data, say: short, text, url } });
  const sentAt = now();
  return {
    body,
    headers: {
      'content-type': 'application/json',
      'webhook-id': id,
      'webhook-timestamp': String(Math.floor(sentAt.getTime() / 1000)),
      'webhook-signature': new Webhook(secret).sign(id, sentAt, body),
    },
  };
}
