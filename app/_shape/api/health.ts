import { z } from 'zod';

/** Whether the parts of Holdfast are there. */
export const health = z.object({
  web: z.literal('up'),
  database: z.enum(['up', 'down']),
  worker: z.enum(['up', 'late', 'never seen', 'unknown']),
  workerLastSeen: z.iso.datetime().nullable().describe("Instant of the worker's last sign, UTC."),
  readings: z
    .enum(['ready', 'no part for next month', 'unknown'])
    .describe('Whether readings of next month have a place to go to; the worker makes it months ahead.'),
});

export type Health = z.output<typeof health>;
