import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { once } from 'node:events';
import { sessionCookieName, visitOf } from '#server/gate/visit';
import { guard } from '#server/web/guard';

/** What the stand-in for the pages says of a request. */
export interface Told {
  path: string;
  /** As the gate takes it: which address a throttle counts for, and whether cookies are for https alone. */
  visit: { address: string; isSecure: boolean; cookie: string } | null;
  headers: Record<string, string>;
  body: string;
}

/**
 * What listens where the web process does, and answers by the guard and the gate of Holdfast: `/live` with news, one at once
 * and one for each call of `tell`; `/talk` by speaking something else; everything else with what was made of the request.
 */
export async function startPages(): Promise<{
  port: number;
  tell: () => void;
  watching: () => number;
  server: Server;
}> {
  const watching = new Set<import('node:http').ServerResponse>();
  const server = createServer((request, response) => {
    const asked = { method: request.method ?? '', url: `http://inside${request.url}`, headers: headersOf(request) };
    const guarded = guard(asked);
    if (guarded.answer) {
      response.writeHead(guarded.answer.status).end();
      return;
    }
    if (request.url === '/live') {
      response.writeHead(200, { ...guarded.headers, 'content-type': 'text/event-stream' });
      response.write('data: first\n\n');
      watching.add(response);
      response.on('close', () => watching.delete(response));
      return;
    }
    let body = '';
    request.on('data', (part) => {
      body += part;
    });
    request.on('end', () => {
      const cookies = ['a=1; Path=/', 'b=2; Path=/'];
      response.writeHead(200, { ...guarded.headers, 'content-type': 'application/json', 'set-cookie': cookies });
      response.end(JSON.stringify(told(request, body)));
    });
  });
  server.on('upgrade', (request, socket) => {
    socket.write('HTTP/1.1 101 Switching Protocols\r\nConnection: upgrade\r\nUpgrade: echo\r\n\r\n');
    socket.write(`for ${request.headers['x-forwarded-for']};`);
    socket.pipe(socket);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const tell = () => watching.forEach((response) => void response.write('data: next\n\n'));
  return { port: (server.address() as AddressInfo).port, tell, watching: () => watching.size, server };
}

function headersOf({ headers }: IncomingMessage): Headers {
  return new Headers(Object.fromEntries(Object.entries(headers).map(([name, value]) => [name, String(value)])));
}

function told(request: IncomingMessage, body: string): Told {
  const visit = visitOf(headersOf(request));
  return {
    path: request.url ?? '',
    visit: visit && {
      address: visit.address,
      isSecure: visit.origin.isSecure,
      cookie: sessionCookieName(visit.origin),
    },
    headers: Object.fromEntries(headersOf(request)),
    body,
  };
}
