import 'server-only';
import { type IncomingMessage, type OutgoingHttpHeaders, request as ask, type ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import { headersOutside } from './hand-on';

/** Where the pages are answered on this machine. */
export interface Inside {
  port: number;
}

const AWAY = 'Holdfast is being started. Try again in a few seconds.\n';

/** What of an answer is changed on its way out. */
export interface Changes {
  /** Names of headers that are left out, in small letters. */
  leaveOut: ReadonlySet<string>;
  /** Headers that are set instead. */
  set: (answer: IncomingMessage) => string[];
}

const AS_IT_IS: Changes = { leaveOut: new Set(), set: () => [] };

/**
 * Hands a request on to the pages and their answer back, both as they come: a page that is told news gets each at once.
 * Each goes by a connection of its own, so that none is sent on one that is just being closed.
 *
 * @param headers   it is handed on with
 * @param changes   of the answer
 */
export function passOn(
  { port }: Inside,
  request: IncomingMessage,
  response: ServerResponse,
  headers: OutgoingHttpHeaders,
  { leaveOut, set }: Changes = AS_IT_IS,
): void {
  const inner = ask({ host: '127.0.0.1', port, method: request.method, path: request.url, headers, agent: false });
  inner.on('response', (answer) => {
    const outside = [...headersOutside(answer.rawHeaders, leaveOut), ...set(answer)];
    response.writeHead(answer.statusCode ?? 502, outside);
    response.flushHeaders();
    answer.pipe(response);
    answer.on('error', () => response.destroy());
  });
  inner.on('error', () => {
    if (response.headersSent) response.destroy();
    else response.writeHead(502, { 'content-type': 'text/plain; charset=utf-8', 'retry-after': '3' }).end(AWAY);
  });
  response.on('close', () => inner.destroy());
  request.pipe(inner);
}

/** Hands a connection on that is to speak something else from here on (RFC 9110, 7.8). @param head what came already */
export function passUpgrade(
  { port }: Inside,
  request: IncomingMessage,
  socket: Duplex,
  head: Buffer,
  headers: OutgoingHttpHeaders,
): void {
  const asked = { ...headers, connection: 'upgrade', upgrade: request.headers.upgrade };
  const inner = ask({
    host: '127.0.0.1',
    port,
    method: request.method,
    path: request.url,
    headers: asked,
    agent: false,
  });
  inner.on('upgrade', (answer, within, first) => {
    socket.write(statusLine(answer, answer.rawHeaders));
    socket.write(first);
    within.write(head);
    within.pipe(socket).pipe(within);
    within.on('error', () => socket.destroy());
    socket.on('error', () => within.destroy());
    socket.on('close', () => within.destroy());
  });
  inner.on('response', (answer) => {
    socket.write(statusLine(answer, [...headersOutside(answer.rawHeaders), 'connection', 'close']));
    answer.pipe(socket);
  });
  inner.on('error', () => socket.destroy());
  socket.on('error', () => inner.destroy());
  inner.end();
}

function statusLine({ statusCode, statusMessage }: IncomingMessage, raw: readonly string[]): string {
  const lines = raw.flatMap((name, at) => (at % 2 === 0 ? [`${name}: ${raw[at + 1]}`] : []));
  return `${[`HTTP/1.1 ${statusCode} ${statusMessage}`, ...lines].join('\r\n')}\r\n\r\n`;
}
