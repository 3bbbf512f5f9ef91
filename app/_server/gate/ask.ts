import 'server-only';
import { headers } from 'next/headers';
import type { z } from 'zod';
import type { Result } from '#core/result';
import type { Refusal } from './refusal';
import { pass, type UseCase } from './use-case';
import { whoAsksOnce } from './who';

/**
 * Lets a page ask a use case. Reading who asks makes the page live: it is never kept from the build.
 *
 * @param shape     what the input must be
 * @param carryOut   what to ask
 * @returns         asks it with raw input, such as the parts of an address
 */
export function ask<S extends z.ZodType, T>(
  shape: S,
  carryOut: UseCase<z.output<S>, T>,
): (raw: unknown) => Promise<Result<T, Refusal>> {
  return async (raw) => await pass(shape, carryOut, await whoAsksOnce(await headers()), raw);
}
