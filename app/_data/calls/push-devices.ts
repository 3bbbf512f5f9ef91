import 'server-only';
import { noteEvent } from '../accounts/events';
import { database } from '../client';
import { newId } from '../new-id';
import { inTransaction } from '../transaction';

/** Where a browser takes messages, as it told. */
export interface PushPlace {
  endpoint: string;
  /** Its public key and shared secret, base64url. */
  p256dh: string;
  auth: string;
}

/** A browser of somebody's that takes calls. */
export interface PushDevice {
  id: string;
  name: string;
  madeAt: Date;
  /** When its push service last took a message; null: never. */
  takenAt: Date | null;
}

/** The browsers of somebody's that take calls, in the order they were added. */
export async function listPushDevices(accountId: string): Promise<PushDevice[]> {
  return await database().pushDevice.findMany({
    where: { accountId },
    select: { id: true, name: true, madeAt: true, takenAt: true },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
  });
}

/** Where the browsers of somebody's take messages. */
export async function pushPlaces(accountId: string): Promise<(PushPlace & { id: string; name: string })[]> {
  return await database().pushDevice.findMany({
    where: { accountId, account: { endedAt: null } },
    select: { id: true, name: true, endpoint: true, p256dh: true, auth: true },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
  });
}

/** Has a browser take the calls of somebody; one that took those of somebody else no longer does. */
export async function addPushDevice(accountId: string, place: PushPlace, name: string, at: Date): Promise<void> {
  await inTransaction(async (tx) => {
    await tx.pushDevice.deleteMany({ where: { endpoint: place.endpoint } });
    await tx.pushDevice.create({ data: { id: newId(), accountId, ...place, name, madeAt: at } });
    await noteEvent(tx, { kind: 'push-device-added', accountId, by: accountId }, at);
  });
}

/** Removes a browser of somebody's. @returns whether there was one */
export async function removePushDevice(accountId: string, id: string, at: Date): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const { count } = await tx.pushDevice.deleteMany({ where: { id, accountId } });
    if (count > 0) await noteEvent(tx, { kind: 'push-device-removed', accountId, by: accountId }, at);
    return count > 0;
  });
}

/** Forgets a browser that its push service no longer knows. */
export async function forgetPushDevice(id: string): Promise<void> {
  await database().pushDevice.deleteMany({ where: { id } });
}

/** Notes that a push service took a message for a browser. */
export async function notePushTaken(id: string, at: Date): Promise<void> {
  await database().pushDevice.updateMany({ where: { id }, data: { takenAt: at } });
}
