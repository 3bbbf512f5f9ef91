import 'server-only';
import { createTransport } from 'nodemailer';
import { env } from '../env';

/** A message in plain text. */
export interface Mail {
  /** One address, or several. */
  to: string | string[];
  subject: string;
  text: string;
  /** Tells a repeat from something new: it becomes the Message-ID. */
  id?: string;
  /** Marked as urgent, and as written by a machine, so that nobody's absence answers it. */
  isUrgent?: boolean;
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
export async function sendMail({ to, subject, text, id, isUrgent = false }: Mail): Promise<void> {
  const url = mailUrl();
  const from = env().HOLDFAST_MAIL_FROM ?? senderFor(url);
  const transport = transportTo(url);
  const domain = from.match(/@([^\s<>]+)/)?.[1] ?? 'holdfast.invalid';
  try {
    await transport.sendMail({
      ...{ from, to, subject, text },
      ...(id === undefined ? {} : { messageId: `<${id}@${domain}>` }),
      ...(isUrgent ? { priority: 'high', headers: { 'auto-submitted': 'auto-generated' } } : {}),
    });
  } finally {
    transport.close();
  }
}

/**
 * Asks the mail server whether it would take mail: connects, and signs in where a name was given. Nothing is sent.
 *
 * @throws   when no server was named, none answers, or it does not let us in
 */
export async function askMailServer(): Promise<void> {
  const transport = transportTo(mailUrl());
  try {
    await transport.verify();
  } finally {
    transport.close();
  }
}

function mailUrl(): string {
  const { HOLDFAST_MAIL_URL } = env();
  if (HOLDFAST_MAIL_URL === undefined) throw new Error('No mail server was named in HOLDFAST_MAIL_URL.');
  return HOLDFAST_MAIL_URL;
}

function transportTo(url: string) {
  return createTransport({
    url,
    connectionTimeout: PATIENCE_MS,
    greetingTimeout: PATIENCE_MS,
    socketTimeout: PATIENCE_MS,
    // A message is the text it is given: no part of it is ever read from a file or an address.
    disableFileAccess: true,
    disableUrlAccess: true,
  });
}

/** The sender when none was named: whoever signs in at the mail server, if that is an address. */
function senderFor(url: string): string {
  const { username, hostname } = new URL(url);
  const user = decodeURIComponent(username);
  return user.includes('@') ? user : `holdfast@${hostname}`;
}
