import 'server-only';
import { createTransport } from 'nodemailer';
import { env } from '../env';

/** A message in plain text. */
export interface Mail {
  /** One address, or several. */
  to: string | string[];
  subject: string;
  text: string;
}

/** ms a mail server has to answer at each step. */
const PATIENCE_MS = 15_000;

/** Whether a server was named that takes mail. */
export function isMailConfigured(): boolean {
  return env().HOLDFAST_MAIL_URL !== undefined;
}

/**
 * Hands a message to the mail server and returns once the server has taken it. It is called by tasks of the worker, which
 * are tried again when it throws; nobody waits for it on a screen.
 *
 * @throws   when no server was named, none answers, or it takes the message from or for nobody
 */
export async function sendMail({ to, subject, text }: Mail): Promise<void> {
  const { HOLDFAST_MAIL_URL, HOLDFAST_MAIL_FROM } = env();
  if (HOLDFAST_MAIL_URL === undefined) throw new Error('No mail server was named in HOLDFAST_MAIL_URL.');
  const transport = createTransport({
    url: HOLDFAST_MAIL_URL,
    connectionTimeout: PATIENCE_MS,
    greetingTimeout: PATIENCE_MS,
    socketTimeout: PATIENCE_MS,
    // A message is the text it is given: no part of it is ever read from a file or an address.
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  try {
    await transport.sendMail({ from: HOLDFAST_MAIL_FROM ?? senderFor(HOLDFAST_MAIL_URL), to, subject, text });
  } finally {
    transport.close();
  }
}

/** The sender when none was named: whoever signs in at the mail server, if that is an address. */
function senderFor(url: string): string {
  const { username, hostname } = new URL(url);
  const user = decodeURIComponent(username);
  return user.includes('@') ? user : `holdfast@${hostname}`;
}
