import { CHANNELS } from '#core/alarms/channels';
import { z } from 'zod';

/** The page of the calls of a site. */
export const callsPlace = z.object({ site: z.string() });

/** Has somebody called for a test; whoever asks when nobody is named. */
export const testCallRequest = callsPlace.extend({
  account: z.uuid({ error: 'must be the id of an account' }).optional(),
});

/** Says that a test call came. */
export const testAnswerRequest = callsPlace.extend({
  test: z.uuid({ error: 'must be the id of a test call' }),
  by: z.enum(CHANNELS, { error: 'must be one of the ways there are' }).optional(),
});

/** Longest address, characters. */
const MOST = 2000;

/** Has the calls of a site posted somewhere. */
export const webhookRequest = callsPlace.extend({
  url: z
    .url({ protocol: /^https?$/, error: 'must be an address that begins with https://' })
    .max(MOST, { error: `must be ${MOST} characters at most` }),
});

/** 1 to 200 characters of base64url. */
const key = z.string().regex(/^[A-Za-z0-9_-]{1,200}={0,2}$/, { error: 'must be base64url' });

/** A browser that is to take calls, as it describes itself. */
export const pushDeviceRequest = z.object({
  name: z.string().trim().min(1, { error: 'must not be blank' }).max(80, { error: 'must be 80 characters at most' }),
  endpoint: z.url({ protocol: /^https?$/ }).max(MOST),
  p256dh: key,
  auth: key,
});

/** A browser of one's own. */
export const pushDevicePlace = z.object({ id: z.uuid({ error: 'must be the id of a browser' }) });
