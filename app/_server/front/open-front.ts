import 'server-only';
import { createServer as createPlain, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer as createSecure, type Server as Secure } from 'node:https';
import type { Server } from 'node:net';
import { bothDoors } from './both-doors';
import { type Asker, askerOf, headersInside } from './hand-on';
import type { Pair } from './issue';
import { type Changes, type Inside, passOn, passUpgrade } from './pass-on';
import { type Called, plainTurn, secureTurn, type Turn } from './turn';

/** What stands before the pages. */
export interface Front {
  inside: Inside;
  called: Called;
  /** Whether an address is that of a proxy which was named. */
  isProxy: (address: string) => boolean;
}

/** ms an unused connection of a browser is kept. */
const KEPT_MS = 20_000;

/** A page in the clear leaves no cookie, promises nothing and loads its parts in the clear. */
const IN_THE_CLEAR: Changes = {
  leaveOut: new Set(['set-cookie', 'strict-transport-security', 'content-security-policy']),
  set: ({ headers }) => {
    const policy = [headers['content-security-policy'] ?? []].flat().join(', ');
    return policy === '' ? [] : ['content-security-policy', policy.replace(/;\s*upgrade-insecure-requests/, '')];
  },
};

/**
 * What other machines speak to: encrypted before the pages, which listen to this machine alone.
 *
 * @param pair   certificate and key to begin with
 * @returns      the server to listen with, and how to show another certificate to whoever comes next
 */
export function openFront(front: Front, pair: Pair): { server: Server; show: (next: Pair) => void } {
  const { inside, called } = front;
  const secure = createSecure({ ...shown(pair), keepAliveTimeout: KEPT_MS }, (request, response) => {
    answer(secureTurn, request, response, front, (asker) => {
      passOn(inside, request, response, headersInside(request.headers, asker, called.own.host, 'https'));
    });
  });
  secure.on('upgrade', (request, socket, head) => {
    const asker = askerOf(request.socket, request.headers, front.isProxy);
    if (secureTurn(knock(request, asker), called).turn !== 'pass') return void socket.destroy();
    passUpgrade(inside, request, socket, head, headersInside(request.headers, asker, called.own.host, 'https'));
  });
  const plain = createPlain({ keepAliveTimeout: KEPT_MS }, (request, response) => {
    answer(plainTurn, request, response, front, (asker) => {
      const { cookie: _, authorization: __, ...bare } = request.headers;
      passOn(inside, request, response, headersInside(bare, asker, called.own.host, 'http'), IN_THE_CLEAR);
    });
  });
  return { server: bothDoors(secure, plain), show: (next) => showNext(secure, next) };
}

function showNext(secure: Secure, pair: Pair): void {
  secure.setSecureContext(shown(pair));
}

function shown({ certificate, key }: Pair) {
  return { cert: certificate, key, minVersion: 'TLSv1.2' as const };
}

function knock({ method = '', url = '/' }: IncomingMessage, { host }: Asker) {
  return { method, host, path: url };
}

function answer(
  turnOf: (asked: ReturnType<typeof knock>, called: Called) => Turn,
  request: IncomingMessage,
  response: ServerResponse,
  { called, isProxy }: Front,
  pass: (asker: Asker) => void,
): void {
  const asker = askerOf(request.socket, request.headers, isProxy);
  const turn = turnOf(knock(request, asker), called);
  if (turn.turn === 'pass') {
    pass(asker);
    return;
  }
  const text = { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' };
  if (turn.turn === 'lead') response.writeHead(307, { ...text, location: turn.to }).end(`${turn.to}\n`);
  else response.writeHead(turn.status, text).end(`${turn.said}\n`);
}
