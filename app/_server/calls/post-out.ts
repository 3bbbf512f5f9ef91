import 'server-only';
import http from 'node:http';
import https from 'node:https';
import type { Outbound } from './outbound';

/** ms until a connection has to stand, and until the whole answer has to be there. */
const PATIENCE_MS = 15_000;
/** Characters that are read of an answer: it is only shown. */
const READ = 200;

/** What the other side said. */
export interface Answered {
  status: number;
  /** The beginning of what it said. */
  said: string;
}

/**
 * Posts something to an address that was looked up, and to none other: a name that leads elsewhere by now is not asked again,
 * and nothing is followed to where an answer points.
 *
 * @throws   when nobody answers in time
 */
export async function postOut(
  { url, addresses }: Outbound,
  { headers, body }: { headers: Record<string, string | number>; body: string | Buffer },
): Promise<Answered> {
  const request = (url.protocol === 'https:' ? https : http).request(url, {
    method: 'POST',
    headers: { ...headers, 'content-length': Buffer.byteLength(body) },
    // Each call stands alone: no connection is kept that was opened for another address.
    agent: false,
    lookup: (_name, options, found) => {
      const [first] = addresses;
      if (!first) found(new Error('The name leads nowhere.'), '');
      else if (options.all) found(null, addresses);
      else found(null, first.address, first.family);
    },
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  return await new Promise((done, failed) => {
    request.on('error', failed);
    request.on('response', (response) => {
      let said = '';
      const end = () => done({ status: response.statusCode ?? 0, said: said.slice(0, READ) });
      response.setEncoding('utf8');
      response.on('data', (part: string) => {
        said += part;
        if (said.length < READ) return;
        end();
        response.destroy();
      });
      response.on('end', end);
      response.on('error', failed);
    });
    request.end(body);
  });
}
