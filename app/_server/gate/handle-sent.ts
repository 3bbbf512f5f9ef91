import 'server-only';
import type { z } from 'zod';
import { hasRoom } from '../machine/has-room';
import { MOST_BYTES, readBody, readBytes, type Unread } from '../readings/read-body';
import { type Place, refusalResponse } from './handle';
import { pass, type UseCase } from './use-case';
import { whoAsks } from './who';

const UNREAD: Readonly<Record<Unread, { status: number; said: string }>> = {
  'too-large': { status: 413, said: `At most ${MOST_BYTES / 1e6} MB are taken at once.` },
  'no-text': { status: 400, said: 'It is not UTF-8.' },
  'broken-off': { status: 400, said: 'It was broken off.' },
  'too-slow': { status: 408, said: 'It did not come in time.' },
};

/**
 * Makes a handler of a use case that takes what a page of ours sends by itself. Its input are the parts of the address, what
 * stands behind the question mark, and the body: the fields of its JSON, or all its bytes as `body`.
 *
 * @param shape      what the input must be
 * @param carryOut   what to do
 * @param takes      how the body is read
 */
export function handleSent<S extends z.ZodType, T>(
  shape: S,
  carryOut: UseCase<z.output<S>, T>,
  takes: 'json' | 'bytes' = 'json',
): (request: Request, place: Place) => Promise<Response> {
  return async (request, { params }) => {
    const who = await whoAsks(request.headers);
    // Whoever is not known sends nothing that is read.
    if (!who) return refusalResponse({ why: 'not-signed-in' });
    if (!(await hasRoom())) return refusalResponse({ why: 'no-room' });
    const body = takes === 'json' ? await readBody(request) : await readBytes(request);
    if (typeof body === 'string') return Response.json({ said: UNREAD[body].said }, { status: UNREAD[body].status });
    const sent = 'bytes' in body ? { body: body.bytes } : fieldsOf(body.text);
    const raw = { ...sent, ...Object.fromEntries(new URL(request.url).searchParams), ...(await params) };
    const answer = await pass(shape, carryOut, who, raw);
    return answer.ok ? Response.json(answer.value) : refusalResponse(answer.reason);
  };
}

/** The fields of a JSON object; none when it is no such thing, which the shape then says. */
function fieldsOf(text: string): object {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? value : {};
  } catch {
    return {};
  }
}
