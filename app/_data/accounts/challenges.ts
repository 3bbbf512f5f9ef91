import 'server-only';
import { database } from '../client';

/** ms a challenge waits for its answer: a person has to find their key. */
const LIFE_MS = 300_000;

/**
 * Keeps a challenge that was handed out for a passkey.
 *
 * @param accountId   whose it is when a passkey is added; null when somebody signs in
 */
export async function keepChallenge(challenge: string, accountId: string | null, at: Date): Promise<void> {
  const expiresAt = new Date(at.getTime() + LIFE_MS);
  await database().passkeyChallenge.create({ data: { challenge, accountId, expiresAt } });
}

/** Takes a challenge that was handed out: it is good for one answer. @returns whether there was one */
export async function takeChallenge(challenge: string, accountId: string | null, at: Date): Promise<boolean> {
  const where = { challenge, accountId, expiresAt: { gt: at } };
  return (await database().passkeyChallenge.deleteMany({ where })).count > 0;
}

/** Removes the challenges that were never answered. */
export async function clearChallenges(at: Date): Promise<void> {
  await database().passkeyChallenge.deleteMany({ where: { expiresAt: { lte: at } } });
}
