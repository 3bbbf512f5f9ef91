import { z } from 'zod';

/** Characters of an answer at most: a key that vouches for itself with certificates sends some thousands. */
const LONGEST = 50_000;

const base64url = z.string().regex(/^[\w-]+$/);

/** What every answer of an authenticator has (Web Authentication Level 3, 5.1.8); the library looks at the rest. */
const answer = <R extends z.ZodRawShape>(response: R) =>
  z
    .string()
    .max(LONGEST)
    .transform((text, context): unknown => {
      try {
        return JSON.parse(text);
      } catch {
        context.addIssue({ code: 'custom', message: 'is not JSON' });
        return z.NEVER;
      }
    })
    .pipe(
      z.object({
        id: base64url,
        rawId: base64url,
        type: z.literal('public-key'),
        clientExtensionResults: z.object({}),
        response: z.object({ clientDataJSON: base64url, ...response }),
      }),
    );

/** A name for a passkey. */
const passkeyName = z
  .string({ error: 'is missing' })
  .trim()
  .min(1, { error: 'is missing' })
  .max(80, { error: 'is too long' });

/** A passkey that was made for an account. */
export const newPasskeyRequest = z.object({
  name: passkeyName,
  answer: answer({ attestationObject: base64url, transports: z.array(z.string().max(20)).max(10).optional() }),
});

/** A passkey that signs in. */
export const passkeySignInRequest = z.object({
  answer: answer({ authenticatorData: base64url, signature: base64url, userHandle: base64url.optional() }),
  to: z.string().max(2000).optional(),
});

/** A passkey by its id. */
export const passkeyRequest = z.object({ id: base64url.max(2000) });

/** Another name for a passkey. */
export const namePasskeyRequest = passkeyRequest.extend({ name: passkeyName });
