import 'server-only';
import { watchMail } from '../../health/watch-mail';

/** Asks the mail server every five minutes whether it would take mail. */
export async function mailPath(): Promise<void> {
  await watchMail();
}
