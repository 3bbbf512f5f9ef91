import 'server-only';
import type { Task } from 'graphile-worker';
import { z } from 'zod';
import { makeCall } from '../../alarms/make-call';

const Payload = z.object({ site: z.uuid(), call: z.uuid() });

/** Tells somebody of an alarm. */
export const makeCallTask: Task = async (payload) => {
  await makeCall(Payload.parse(payload));
};
