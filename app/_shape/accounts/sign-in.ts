import { z } from 'zod';

/** Characters of an address at most (RFC 5321, 4.5.3.1.3). */
const LONGEST_ADDRESS = 254;
const LONGEST_NAME = 120;
/** Characters of a password that are taken in at all; whether it is a good one is judged where it is chosen. */
const LONGEST_TYPED = 1000;

/** What was typed as an address to sign in by: whether it is one is not said, as it is not said whether it has an account. */
const typedEmail = z.string({ error: 'is missing' }).max(1000, { error: 'is too long' });

/** A password as it was typed. */
const typedPassword = z.string({ error: 'is missing' }).max(LONGEST_TYPED, { error: 'is too long' });

/** An address an account is made for. */
export const newEmail = z
  .string({ error: 'is missing' })
  .trim()
  .toLowerCase()
  .max(LONGEST_ADDRESS, { error: 'is too long' })
  .pipe(z.email({ error: 'is no e-mail address' }));

/** What a person is called. */
export const personName = z
  .string({ error: 'is missing' })
  .trim()
  .min(1, { error: 'is missing' })
  .max(LONGEST_NAME, { error: 'is too long' });

/** Token of a link, as it stands in the address. */
export const linkToken = z.string().regex(/^[\w-]{43}$/, { error: 'is none of ours' });

/** Where somebody wanted to go before they had to sign in. */
const wanted = z.string().max(2000).optional();

/** Signing in by address and password. */
export const signInRequest = z.object({ email: typedEmail, password: typedPassword, to: wanted });

/** The first account of Holdfast. */
export const setUpRequest = z.object({ token: linkToken, name: personName, email: newEmail, password: typedPassword });

/** A new password by a link. */
export const newPasswordRequest = z.object({ token: linkToken, password: typedPassword });

/** Another password of one's own. */
export const changePasswordRequest = z.object({ old: typedPassword, password: typedPassword });

/** Asking for a link by mail. */
export const resetRequest = z.object({ email: typedEmail });
