import 'server-only';
import { database } from '../client';

/** The pair of keys by which push services know this Holdfast, base64url, as it is kept. */
export interface KeptPushKeys {
  publicKey: string;
  privateKeySealed: Uint8Array<ArrayBuffer> | null;
  /** As it was kept before such keys were sealed; null when it is sealed. One of the two is there. */
  privateKey: string | null;
}

/** The one pair there is; null while none was made. */
export async function findPushKeys(): Promise<KeptPushKeys | null> {
  return await database().pushKey.findUnique({
    where: { id: 1 },
    select: { publicKey: true, privateKey: true, privateKeySealed: true },
  });
}

/** Keeps a pair, unless there is one: of two processes that make one at once, both go on with the first. */
export async function addPushKeys(
  keys: { publicKey: string; privateKeySealed: Uint8Array<ArrayBuffer> },
  madeAt: Date,
): Promise<KeptPushKeys | null> {
  await database().pushKey.createMany({ data: [{ id: 1, ...keys, madeAt }], skipDuplicates: true });
  return await findPushKeys();
}

/** Keeps the private key sealed, in place of how it stood. */
export async function sealPushKeys(privateKeySealed: Uint8Array<ArrayBuffer>): Promise<void> {
  await database().pushKey.update({ where: { id: 1 }, data: { privateKey: null, privateKeySealed } });
}
