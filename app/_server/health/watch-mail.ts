import 'server-only';
import { notePath } from '#data/calls/paths';
import { now } from '../clock';
import { logInfo } from '../log';
import { askMailServer, isMailConfigured } from '../mail/send-mail';

/** Characters that are kept of what the mail server said. */
const SAID = 200;

/**
 * Asks the mail server whether it would take mail, and keeps what it said: nobody is told by mail while it does not, and that has
 * to be known before somebody should be.
 */
export async function watchMail(): Promise<void> {
  if (!isMailConfigured()) return;
  try {
    await askMailServer();
    await notePath('mail', true, null, now());
  } catch (error) {
    const said = error instanceof Error ? error.message.slice(0, SAID) : 'it said nothing';
    logInfo('mail server takes nothing', { said });
    await notePath('mail', false, said, now());
  }
}
