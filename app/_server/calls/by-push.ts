import 'server-only';
import webpush from 'web-push';
import { forgetPushDevice, notePushTaken, type PushPlace, pushPlaces } from '#data/calls/push-devices';
import { now } from '../clock';
import { env } from '../env';
import { failed, type Message, type Recipient, type Sent } from './message';
import { outbound } from './outbound';
import { postOut } from './post-out';
import { pushKeys } from './push-keys';

/** s for which a push service keeps a message for a device that is off. Common practice, no source. */
const KEPT_S = 4 * 3600;
/** Statuses by which a push service says that it knows a browser no more (RFC 8030, 7.3). */
const GONE = [404, 410];

/**
 * Tells somebody by the push services of their browsers, all of them; told is who was taken for on one. A browser that its
 * service knows no more is forgotten. That a service took a message is not that anybody saw it.
 */
export async function byPush({ accountId }: Recipient, message: Message): Promise<Sent> {
  const devices = await pushPlaces(accountId);
  if (devices.length === 0) return { result: 'no-way', detail: 'no browser takes calls' };
  const came = await Promise.all(devices.map(async (device) => ({ device, sent: await push(device, message) })));
  for (const { device, sent } of came) {
    if (sent.result === 'taken') await notePushTaken(device.id, now());
    if (sent.result === 'no-way') await forgetPushDevice(device.id);
  }
  const missed = came.filter(({ sent }) => sent.result !== 'taken');
  const detail = missed
    .map(({ device, sent }) => `${device.name}: ${sent.detail ?? ''}`)
    .join('; ')
    .slice(0, 200);
  if (missed.length < came.length) return { result: 'taken', ...(detail === '' ? {} : { detail }) };
  const isGone = missed.every(({ sent }) => sent.result === 'no-way');
  return { result: isGone ? 'no-way' : 'failed', detail };
}

/** One browser. The topic lets what is about the same alarm replace what still waits for the device. */
async function push({ endpoint, p256dh, auth }: PushPlace, message: Message): Promise<Sent> {
  const { subject: title, short: body, url, about: tag } = message;
  try {
    const { headers, body: sealed } = webpush.generateRequestDetails(
      { endpoint, keys: { p256dh, auth } },
      JSON.stringify({ title, body, url, tag }),
      {
        vapidDetails: { subject: contact(), ...(await pushKeys()) },
        TTL: KEPT_S,
        urgency: 'high',
        topic: tag.replaceAll('-', ''),
        contentEncoding: 'aes128gcm',
      },
    );
    if (!Buffer.isBuffer(sealed)) throw new Error('Nothing was sealed.');
    const { status } = await postOut(await outbound(endpoint), { headers: plain(headers), body: sealed });
    if (status >= 200 && status < 300) return { result: 'taken' };
    if (GONE.includes(status)) return { result: 'no-way', detail: 'its push service knows it no more' };
    return { result: 'failed', detail: `its push service answered with status ${status}` };
  } catch (error) {
    return failed(error, 'its push service said nothing');
  }
}

function plain(headers: Record<string, unknown>): Record<string, string | number> {
  return Object.fromEntries(
    Object.entries(headers).flatMap(([name, value]) =>
      typeof value === 'string' || typeof value === 'number' ? [[name, value]] : [],
    ),
  );
}

/** Whom a push service may turn to: where Holdfast is reached, or its mail address (RFC 8292, 2.1). */
function contact(): string {
  const { HOLDFAST_ADDRESS: address, HOLDFAST_MAIL_FROM: from } = env();
  if (address?.startsWith('https:')) return address;
  const mail = from?.match(/[^\s<>]+@[^\s<>]+/)?.[0];
  return `mailto:${mail ?? 'holdfast@holdfast.invalid'}`;
}
