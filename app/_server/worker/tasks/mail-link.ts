import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { mailLink } from '../../accounts/mail-link';

const Payload = z.object({ account: z.uuid().nullable(), madeBy: z.string() });

/** Makes the link by which somebody joins, or chooses a new password, and mails it to them. */
export const mailLinkTask: Task = async (payload) => {
  await mailLink(Payload.parse(payload));
};
