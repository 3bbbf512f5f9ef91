import { once } from 'node:events';
import { createServer, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What was posted, as it came over the wire. */
export interface Posted {
  path: string;
  headers: IncomingHttpHeaders;
  body: Buffer;
}

/** A service of a test that takes what is posted to it. */
export interface CallReceiver {
  /** `host:port`, for HOLDFAST_CALL_HOSTS. */
  host: string;
  url: string;
  posted: Posted[];
  /** What it answers from now on. */
  answer: (status: number, headers?: Record<string, string>) => void;
  close: () => Promise<void>;
}

/** Starts a service on a free port of this machine, which the test has to close. */
export async function startCallReceiver(): Promise<CallReceiver> {
  const posted: Posted[] = [];
  let says: [number, Record<string, string>] = [204, {}];
  const server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      posted.push({ path: request.url ?? '', headers: request.headers, body: Buffer.concat(parts) });
      response.writeHead(...says).end();
    });
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  return {
    host: `127.0.0.1:${port}`,
    url: `http://127.0.0.1:${port}`,
    posted,
    answer: (status, headers = {}) => {
      says = [status, headers];
    },
    close: async () => await new Promise<void>((done) => server.close(() => done())),
  };
}
