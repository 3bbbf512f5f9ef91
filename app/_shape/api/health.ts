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
  alarms: z
    .enum(['judged', 'not judged', 'no site', 'unknown'])
    .describe('Whether the alarms of every site were judged within two minutes.'),
  alarmsJudgedAt: z.iso.datetime().nullable().describe('When those of the site were that waits longest, UTC.'),
  callsWaiting: z.int().nullable().describe('Calls of open alarms to people whom no way has reached yet.'),
  oldestCallAt: z.iso.datetime().nullable().describe('When the oldest of them was made, UTC.'),
  mail: z.enum(['up', 'down', 'not set up', 'unknown']).describe('Whether the mail server would take mail.'),
  outside: z
    .enum(['up', 'down', 'not set up', 'unknown'])
    .describe('Whether the address outside that notices silence was reached.'),
});

export type Health = z.output<typeof health>;
