import 'server-only';
import { createHash } from 'node:crypto';
import { Webhook } from 'standardwebhooks';
import { now } from '../../clock';

/** ms the other side has to answer. */
const PATIENCE_MS = 10_000;

/**
 * Posts anchors as plain text, signed as Standard Webhooks 1.0 says (headers webhook-id, webhook-timestamp and
 * webhook-signature over all three and the body). The same lines have the same id, so that the other side can tell a
 * repeat. Addresses of a private network are called like any other: whoever runs the machine wrote the address into its
 * environment and no one else can; a redirect, which somebody else could write, is not followed.
 *
 * @param place   address and what to sign with
 * @param lines   whole lines
 * @param day     ISO date they are of
 * @throws        when there is nothing to sign with, or the other side does not answer with a status of 200 to 299
 */
export async function postAnchors(
  { url, secret }: { url: string; secret: string | undefined },
  lines: string,
  day: string,
): Promise<void> {
  if (secret === undefined) throw new Error('HOLDFAST_ANCHOR_WEBHOOK needs HOLDFAST_ANCHOR_SECRET to sign with.');
  const id = `anchors_${day}_${createHash('sha256').update(lines).digest('hex').slice(0, 16)}`;
  const sentAt = now();
  const answer = await fetch(url, {
    method: 'POST',
    body: lines,
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'webhook-id': id,
      'webhook-timestamp': String(Math.floor(sentAt.getTime() / 1000)),
      'webhook-signature': new Webhook(secret).sign(id, sentAt, lines),
    },
    redirect: 'manual',
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  await answer.body?.cancel();
  if (!answer.ok) throw new Error(`${new URL(url).host} answered with status ${answer.status}.`);
}
