import type { CarriedOutBy } from '#core/facility/site';
import { z } from 'zod';

const WHO = ['hard-wired', 'controller', 'person'] as const satisfies readonly CarriedOutBy[];

/** Who or what carries out a line. @param about which line */
export function carriedOutBy(about: string) {
  return z
    .enum(WHO)
    .describe(`${about} hard-wired, controller or person; only the first two are credited as automatic.`);
}
