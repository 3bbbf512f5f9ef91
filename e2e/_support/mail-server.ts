import { simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import { mailPort } from './port';

/** What a mail server has taken. */
export interface Mails {
  messages: { to: string; text: string }[];
  close: () => Promise<void>;
}

/** A mail server to which Holdfast sends. @returns what it takes, as it comes */
export async function mailServer(): Promise<Mails> {
  const messages: Mails['messages'] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS', 'AUTH'],
    onData(stream, session, done) {
      simpleParser(stream).then(
        ({ text }) => {
          messages.push({ to: session.envelope.rcptTo.map(({ address }) => address).join(), text: text ?? '' });
          done();
        },
        (error: Error) => done(error),
      );
    },
  });
  await new Promise<void>((resolve) => server.listen(mailPort(), '127.0.0.1', resolve));
  return { messages, close: () => new Promise((resolve) => server.close(() => resolve())) };
}
