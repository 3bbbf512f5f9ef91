import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { mailReset } from '../../accounts/mail-reset';

const Payload = z.object({ account: z.uuid().nullable() });

/** Sends the link by which somebody chooses a new password. */
export const mailResetTask: Task = async (payload) => {
  await mailReset(Payload.parse(payload).account);
};
