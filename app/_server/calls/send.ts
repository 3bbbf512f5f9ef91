import 'server-only';
import type { Channel } from '#core/alarms/channels';
import { byMail } from './by-mail';
import { byPush } from './by-push';
import { byWebhook } from './by-webhook';
import type { Message, Recipient, Sent } from './message';

/** Each way to tell somebody. None acknowledges anything: only a person does, on a page. */
export const SEND: Readonly<Record<Channel, (recipient: Recipient, message: Message) => Promise<Sent>>> = {
  mail: byMail,
  push: byPush,
  webhook: byWebhook,
};
