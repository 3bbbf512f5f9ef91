import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';

/** What the server took: the envelope, and the message as it came over the wire. */
export interface TakenMail {
  from: string;
  to: string[];
  raw: string;
}

/** A real mail server of a test. */
export interface MailServer {
  /** Address for HOLDFAST_MAIL_URL. */
  url: string;
  /** Messages it took so far, oldest first. */
  taken: TakenMail[];
  close: () => Promise<void>;
}

/**
 * Starts a mail server on a free port of this machine. It takes every message but those for `nobody@…`.
 *
 * @returns   the server, which the test has to close
 */
export async function startMailServer(): Promise<MailServer> {
  const taken: TakenMail[] = [];
  const server = new SMTPServer({
    authOptional: true,
    // Without encryption: a certificate of its own would only be the library's known one.
    hideSTARTTLS: true,
    onRcptTo: ({ address }, _session, done) => done(address.startsWith('nobody@') ? new Error('no such box') : null),
    onData(stream, { envelope: { mailFrom, rcptTo } }, done) {
      const parts: Buffer[] = [];
      stream.on('data', (part: Buffer) => parts.push(part));
      stream.on('end', () => {
        const from = mailFrom ? mailFrom.address : '';
        taken.push({ from, to: rcptTo.map(({ address }) => address), raw: Buffer.concat(parts).toString() });
        done();
      });
    },
  });
  server.listen(0, '127.0.0.1');
  await once(server.server, 'listening');
  const { port } = server.server.address() as AddressInfo;
  return {
    url: `smtp://127.0.0.1:${port}`,
    taken,
    close: async () => await new Promise<void>((done) => server.close(done)),
  };
}
