import { once } from 'node:events';
import { request as plainly, type IncomingMessage } from 'node:http';
import { request as securely } from 'node:https';
import { connect } from 'node:tls';
import type { Told } from './pages';

/** A browser of another machine, as far as it matters. */
export interface Visitor {
  port: number;
  /** Whom it trusts. */
  ca: string;
  /** Name and port it calls. */
  host: string;
}

/** What it asks for. */
export interface Asked {
  path?: string;
  method?: string;
  headers?: Record<string, string>;
  body?: string;
  /** Without encryption. */
  isPlain?: boolean;
}

/** Asks, and gives the answer once its head is there. */
export async function askFor({ port, ca, host }: Visitor, asked: Asked = {}): Promise<IncomingMessage> {
  const { path = '/', method = 'GET', headers = {}, body, isPlain = false } = asked;
  const at = { host: '127.0.0.1', port, path, method, headers: { host, ...headers }, agent: false as const };
  const request = isPlain ? plainly(at) : securely({ ...at, ca, servername: host.replace(/:\d+$/, '') });
  request.end(body);
  const [response] = (await once(request, 'response')) as [IncomingMessage];
  response.on('error', () => undefined);
  return response;
}

/** The whole of an answer. */
export async function textOf(response: IncomingMessage): Promise<string> {
  let text = '';
  for await (const part of response) text += part;
  return text;
}

/** What the pages were told of a request. */
export async function toldOf(visitor: Visitor, asked?: Asked): Promise<Told> {
  return JSON.parse(await textOf(await askFor(visitor, asked)));
}

/** Speaks something else by a connection, and gives what came of it. @param words to send */
export async function talk({ port, ca, host }: Visitor, words: string): Promise<string> {
  const socket = connect({ port, host: '127.0.0.1', ca, servername: host.replace(/:\d+$/, '') });
  socket.write(`GET /talk HTTP/1.1\r\nHost: ${host}\r\nConnection: Upgrade\r\nUpgrade: echo\r\n\r\n${words}`);
  let heard = '';
  for await (const part of socket) {
    heard += part;
    if (heard.endsWith(words)) break;
  }
  return heard;
}
