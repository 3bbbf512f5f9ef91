import 'server-only';
import { database } from '../client';

/** E-mail addresses of those who look after Holdfast itself and may sign in. */
export async function administratorAddresses(): Promise<string[]> {
  const accounts = await database().account.findMany({
    where: { everywhere: 'admin', endedAt: null, isDemo: false, email: { not: null } },
    select: { email: true },
    orderBy: { email: 'asc' },
  });
  return accounts.flatMap(({ email }) => (email === null ? [] : [email]));
}
