import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { addPushDevice, removePushDevice } from '#data/calls/push-devices';
import { pushDevicePlace, pushDeviceRequest } from '#shape/calls/requests';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { NotCalled, outbound } from './outbound';

export const addDeviceShape = pushDeviceRequest;
export const removeDeviceShape = pushDevicePlace;

/** Has a browser of one's own take calls. Its push service has to be one that may be called. */
export async function addDevice(
  who: Who,
  { name, ...place }: z.output<typeof addDeviceShape>,
): Promise<Result<true, Refusal>> {
  try {
    await outbound(place.endpoint);
  } catch (error) {
    const why = error instanceof NotCalled ? error.message : 'There is no such host.';
    return refused({ why: 'invalid', faults: [{ path: 'endpoint', message: why }] });
  }
  await addPushDevice(who.id, place, name, now());
  return ok(true);
}

/** Removes a browser of one's own: it takes no calls any more. */
export async function removeDevice(
  who: Who,
  { id }: z.output<typeof removeDeviceShape>,
): Promise<Result<true, Refusal>> {
  return (await removePushDevice(who.id, id, now())) ? ok(true) : refused({ why: 'not-found', what: 'thing' });
}
