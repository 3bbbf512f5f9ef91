import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { CHANGE_EVENTS } from '#core/rota/change';
import { mailChange } from '../../rota/changes/mail-change';

const Payload = z.object({
  site: z.uuid(),
  change: z.uuid(),
  account: z.uuid(),
  news: z.enum([...CHANGE_EVENTS, 'waits']),
});

/** Mails somebody that leave or a swap waits for their answer, or what came of it. */
export const dutyMail: Task = async (payload) => {
  await mailChange(Payload.parse(payload));
};
