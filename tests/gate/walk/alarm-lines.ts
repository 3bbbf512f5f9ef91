import type { Line } from './line';

/** Entries about the alarms of a site, and the stream that says that something has changed. */
export const ALARM_LINES: Readonly<Record<string, Line>> = {
  'app/api/live/[site]/route.ts GET': { verb: 'see' },
};
