import 'server-only';
import { database } from '../client';

/** The pair of keys by which push services know this Holdfast, base64url. */
export interface PushKeys {
  publicKey: string;
  privateKey: string;
}

/** The one pair there is; null while none was made. */
export async function findPushKeys(): Promise<PushKeys | null> {
  return await database().pushKey.findUnique({ where: { id: 1 }, select: { publicKey: true, privateKey: true } });
}

/** Keeps a pair, unless there is one: of two processes that make one at once, both go on with the first. */
export async function keepPushKeys(keys: PushKeys, madeAt: Date): Promise<PushKeys> {
  await database().pushKey.createMany({ data: [{ id: 1, ...keys, madeAt }], skipDuplicates: true });
  return (await findPushKeys()) ?? keys;
}
