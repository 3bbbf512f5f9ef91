import 'server-only';
import { headers } from 'next/headers';
import type { z } from 'zod';
import { refused, type Result } from '#core/result';
import { type Action, fieldsOf, refusalAnswer } from './act';
import { type Place, refusalResponse } from './handle';
import type { Refusal } from './refusal';
import { faultOf } from './use-case';
import { type Visit, visitOf } from './visit';

/** Something that anybody may do, known or not: to sign in, and what leads there. */
export type OpenCase<I, T> = (visit: Visit, input: I) => Promise<Result<T, Refusal>>;

/**
 * The pipe for what needs nobody to be signed in: made to us, parse, do, answer.
 *
 * @param shape      what the input must be
 * @param carryOut   the use case
 * @param visit      the request; null when it was made by a name that is not ours
 * @param raw        the input as it came
 */
export async function passOpenly<S extends z.ZodType, T>(
  shape: S,
  carryOut: OpenCase<z.output<S>, T>,
  visit: Visit | null,
  raw: unknown,
): Promise<Result<T, Refusal>> {
  if (!visit) return refused({ why: 'not-allowed' });
  const parsed = shape.safeParse(raw);
  if (!parsed.success) return refused({ why: 'invalid', faults: parsed.error.issues.map(faultOf) });
  return await carryOut(visit, parsed.data);
}

/**
 * Makes a server action of what needs nobody to be signed in.
 *
 * @param shape      what the form's fields must be
 * @param carryOut   what to do
 */
export function actOpenly<S extends z.ZodType, T>(shape: S, carryOut: OpenCase<z.output<S>, T>): Action<T> {
  return async (_before, form) => {
    const answer = await passOpenly(shape, carryOut, visitOf(await headers()), await fieldsOf(form));
    return answer.ok ? answer : refusalAnswer(answer.reason);
  };
}

/**
 * Lets a page ask what needs nobody to be signed in.
 *
 * @param shape      what the input must be
 * @param carryOut   what to ask
 */
export function askOpenly<S extends z.ZodType, T>(
  shape: S,
  carryOut: OpenCase<z.output<S>, T>,
): (raw: unknown) => Promise<Result<T, Refusal>> {
  return async (raw) => await passOpenly(shape, carryOut, visitOf(await headers()), raw);
}

/**
 * Makes a GET handler of what needs nobody to be signed in: whoever has the word in the address may have the answer.
 *
 * @param shape      what the parts of the address must be
 * @param carryOut   the use case
 * @param respond    writes the answer
 */
export function handleOpenly<S extends z.ZodType, T>(
  shape: S,
  carryOut: OpenCase<z.output<S>, T>,
  respond: (value: T) => Response,
): (request: Request, place: Place) => Promise<Response> {
  return async (request, { params }) => {
    const answer = await passOpenly(shape, carryOut, visitOf(request.headers), await params);
    return answer.ok ? respond(answer.value) : refusalResponse(answer.reason);
  };
}
