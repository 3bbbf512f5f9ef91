import 'server-only';
import type { z } from 'zod';
import { refused, type Result } from '#core/result';
import type { Fault, Refusal } from './refusal';
import type { Who } from './who';

/** Something people do: given who asks and parsed input, an answer or a refusal. It asks `may` itself. */
export type UseCase<I, T> = (who: Who, input: I) => Promise<Result<T, Refusal>>;

/**
 * The pipe every entry goes through: who, parse, may and do (both in the use case), answer.
 *
 * @param shape     what the input must be
 * @param carryOut   the use case
 * @param who       who asks; null when nobody is known
 * @param raw       the input as it came
 */
export async function pass<S extends z.ZodType, T>(
  shape: S,
  carryOut: UseCase<z.output<S>, T>,
  who: Who | null,
  raw: unknown,
): Promise<Result<T, Refusal>> {
  if (!who) return refused({ why: 'not-signed-in' });
  const parsed = shape.safeParse(raw);
  if (!parsed.success) return refused({ why: 'invalid', faults: parsed.error.issues.map(faultOf) });
  return await carryOut(who, parsed.data);
}

/** What zod found wrong, as a fault of what was sent. */
export function faultOf({ path, message }: z.core.$ZodIssue): Fault {
  return { path: path.join('.'), message };
}
