import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { now } from '../../clock';
import { sendAnchors } from '../../record/send-anchors';

const Payload = z.object({ place: z.enum(['file', 'mail', 'webhook']) });

/** Sends the anchors of the day to one place; when the place fails, the job is tried again and the others go on. */
export const sendAnchor: Task = async (payload) => {
  await sendAnchors(Payload.parse(payload).place, now());
};
