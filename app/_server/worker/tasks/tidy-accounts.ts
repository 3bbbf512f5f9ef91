import 'server-only';
import { clearChallenges } from '#data/accounts/challenges';
import { clearTries } from '#data/accounts/tries';
import { now } from '../../clock';

/** Removes every hour what signing in leaves behind and nobody needs: challenges and counts whose time is over. */
export async function tidyAccounts(): Promise<void> {
  await clearChallenges(now());
  await clearTries(now());
}
