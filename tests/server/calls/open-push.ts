import { createDecipheriv, createECDH, createHmac, createPublicKey, verify } from 'node:crypto';

/** A browser of a test: its keys, and what it takes. */
export interface TestBrowser {
  p256dh: string;
  auth: string;
  /** What was sealed for it (RFC 8188, RFC 8291), opened with Node alone. */
  open: (sealed: Buffer) => string;
}

const hmac = (key: Buffer, ...parts: (Buffer | string)[]) => {
  const made = createHmac('sha256', key);
  for (const part of parts) made.update(part);
  return made.digest();
};
const ONE = Buffer.from([1]);

/** @param own private key and shared secret, base64url */
export function testBrowser(own: { privateKey: string; auth: string }): TestBrowser {
  const ecdh = createECDH('prime256v1');
  ecdh.setPrivateKey(Buffer.from(own.privateKey, 'base64url'));
  const publicKey = ecdh.getPublicKey();
  const auth = Buffer.from(own.auth, 'base64url');
  return {
    p256dh: publicKey.toString('base64url'),
    auth: own.auth,
    open: (sealed) => {
      const salt = sealed.subarray(0, 16);
      const idLength = sealed.readUInt8(20);
      const sender = sealed.subarray(21, 21 + idLength);
      const cipher = sealed.subarray(21 + idLength);
      const secret = ecdh.computeSecret(sender);
      const info = Buffer.concat([Buffer.from('WebPush: info\0'), publicKey, sender]);
      const input = hmac(hmac(auth, secret), info, ONE);
      const prk = hmac(salt, input);
      const key = hmac(prk, 'Content-Encoding: aes128gcm\0', ONE).subarray(0, 16);
      const nonce = hmac(prk, 'Content-Encoding: nonce\0', ONE).subarray(0, 12);
      const gcm = createDecipheriv('aes-128-gcm', key, nonce);
      gcm.setAuthTag(cipher.subarray(-16));
      const plain = Buffer.concat([gcm.update(cipher.subarray(0, -16)), gcm.final()]);
      // The last record ends with 2 and nothing but zeros after it.
      return plain.subarray(0, plain.lastIndexOf(2)).toString();
    },
  };
}

/** What a VAPID header says, once its signature was found to be right (RFC 8292, ES256). */
export function openVapid(authorization: string): { key: string; claims: Record<string, unknown> } {
  const [, token = '', key = ''] = authorization.match(/^vapid t=([^,]+), ?k=(.+)$/) ?? [];
  const [head = '', claims = '', signature = ''] = token.split('.');
  const point = Buffer.from(key, 'base64url');
  const [x, y] = [point.subarray(1, 33), point.subarray(33)].map((half) => half.toString('base64url'));
  const publicKey = createPublicKey({ key: { kty: 'EC', crv: 'P-256', x: x ?? '', y: y ?? '' }, format: 'jwk' });
  const signed = { key: publicKey, dsaEncoding: 'ieee-p1363' as const };
  if (!verify('sha256', Buffer.from(`${head}.${claims}`), signed, Buffer.from(signature, 'base64url')))
    throw new Error('The signature is of somebody else.');
  return { key, claims: JSON.parse(Buffer.from(claims, 'base64url').toString()) };
}
