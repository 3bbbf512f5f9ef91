import 'server-only';
import type { z } from 'zod';
import type { Refusal } from './refusal';
import { refusalWords } from './refusal-words';
import { pass, type UseCase } from './use-case';
import { whoAsks } from './who';

/** What Next gives a handler beside the request: the parts of the address that its folder names. */
export interface Place {
  params: Promise<Record<string, string | string[] | undefined>>;
}

const STATUS: Record<Refusal['why'], number> = {
  'not-signed-in': 401,
  'not-allowed': 403,
  'own-work': 403,
  'not-own-work': 403,
  'wrong-sign-in': 401,
  'too-often': 429,
  'not-found': 404,
  invalid: 422,
  conflict: 409,
  'too-late': 410,
  'no-room': 507,
};

/**
 * Makes a GET handler of a use case. Its input are the parts of the address and what stands behind the question mark.
 *
 * @param shape     what the input must be
 * @param carryOut   what to ask
 * @param respond   writes the answer, given the request it is for; as JSON when left out
 */
export function handle<S extends z.ZodType, T>(
  shape: S,
  carryOut: UseCase<z.output<S>, T>,
  respond: (value: T, request: Request) => Response = (value) => Response.json(value),
): (request: Request, place: Place) => Promise<Response> {
  return async (request, { params }) => {
    const raw = { ...Object.fromEntries(new URL(request.url).searchParams), ...(await params) };
    const answer = await pass(shape, carryOut, await whoAsks(request.headers), raw);
    return answer.ok ? respond(answer.value, request) : refusalResponse(answer.reason);
  };
}

/** The one body every refusal has. */
export function refusalResponse(reason: Refusal): Response {
  return Response.json({ refusal: reason, said: refusalWords(reason) }, { status: STATUS[reason.why] });
}
