import 'server-only';
import { isMailConfigured, sendMail } from '../mail/send-mail';
import { failed, type Message, type Recipient, type Sent } from './message';

/** Tells somebody by e-mail. The same call has the same Message-ID, so that a mailbox can tell a repeat. */
export async function byMail({ id, email }: Recipient, { subject, text }: Message): Promise<Sent> {
  if (email === null) return { result: 'no-way', detail: 'no address' };
  if (!isMailConfigured()) return { result: 'no-way', detail: 'no mail is sent from here' };
  try {
    await sendMail({ to: email, subject, text, id, isUrgent: true });
    return { result: 'taken' };
  } catch (error) {
    return failed(error, 'the mail server said nothing');
  }
}
