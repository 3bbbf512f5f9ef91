import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { CHANNELS } from '#core/alarms/channels';
import { sendReminder } from '../../call-outs/remind';

const Payload = z.object({
  site: z.uuid(),
  callOut: z.uuid(),
  channel: z.enum(CHANNELS),
  id: z.uuid(),
  untilMs: z.number(),
});

/** Reminds whoever went in alone that their time is nearly over. */
export const callOutReminder: Task = async (payload) => {
  await sendReminder(Payload.parse(payload));
};
