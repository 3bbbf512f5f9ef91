import 'server-only';
import webpush from 'web-push';
import { addPushKeys, findPushKeys, type KeptPushKeys, sealPushKeys } from '#data/calls/push-keys';
import { now } from '../clock';
import { seal, unseal } from '../machine/seal';
import { NotCalled } from './outbound';

/** The pair of keys by which push services know this Holdfast, base64url. */
export interface PushKeys {
  publicKey: string;
  privateKey: string;
}

/** What the private key is sealed for. */
const SEALED_FOR = 'push key';

/**
 * The keys by which push services know this Holdfast (VAPID, RFC 8292). They are made when they are first asked for and kept:
 * with others, no browser that was ever added would take a call. The private one is sealed; one that was kept as it was, before
 * such were sealed, is sealed now.
 *
 * @throws NotCalled   when they cannot be sealed or read: the machine has no secret, or another than the one they were sealed with
 */
export async function pushKeys(): Promise<PushKeys> {
  const kept = (await findPushKeys()) ?? (await made());
  const { publicKey, privateKey, privateKeySealed } = kept;
  if (privateKey !== null) {
    const sealed = seal(privateKey, SEALED_FOR);
    if (sealed.ok) await sealPushKeys(sealed.value);
    return { publicKey, privateKey };
  }
  const read = privateKeySealed ? unseal(privateKeySealed, SEALED_FOR) : null;
  if (read?.ok) return { publicKey, privateKey: read.value };
  throw new NotCalled(
    read?.reason === 'other-secret'
      ? 'the keys for browser push were sealed with another HOLDFAST_SECRET'
      : 'the keys for browser push cannot be read without HOLDFAST_SECRET',
  );
}

async function made(): Promise<KeptPushKeys> {
  const { publicKey, privateKey } = webpush.generateVAPIDKeys();
  const sealed = seal(privateKey, SEALED_FOR);
  const kept = sealed.ok ? await addPushKeys({ publicKey, privateKeySealed: sealed.value }, now()) : null;
  if (!kept) throw new NotCalled('keys for browser push cannot be kept without HOLDFAST_SECRET');
  return kept;
}
