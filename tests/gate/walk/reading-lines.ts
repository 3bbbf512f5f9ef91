import type { Given, Line } from './line';

const READINGS = 'app/(house)/sites/[site]/readings';
const TAKE_IN = `${READINGS}/take-in`;
const sensor = { system: 'tank-1', sensor: 'display-temperature' };
const file = 'time,temperature\n2026-01-05 08:00,24.5\n2026-01-05 09:00,24.6\n';
/** A layout of other files than this one. */
const draft = JSON.stringify({
  encoding: 'utf-8',
  delimiter: ';',
  head: ['when', 'what'],
  hasUnitsRow: false,
  decimal: '.',
  time: { as: 'text', date: 0, order: 'ymd' },
  zone: 'UTC',
  midnight: 'real',
  missing: [],
  columns: [],
  flags: {},
  goodFrom: null,
});
const sent = (form: Given['form']) => () => ({ form });

/** Entries about the readings of a site that somebody looks at, and about the files of loggers. */
export const READING_LINES: Readonly<Record<string, Line>> = {
  [`${READINGS}/page.tsx`]: { verb: 'see' },
  [`${READINGS}/[system]/[sensor]/page.tsx`]: {
    verb: 'see',
    given: () => ({ params: sensor, search: { span: 'week' } }),
  },
  'app/api/readings/[site]/[system]/[sensor]/route.ts GET': { verb: 'see', given: () => ({ params: sensor }) },
  [`${TAKE_IN}/page.tsx`]: { verb: 'take-in-file' },
  [`${TAKE_IN}/actions.ts lookAtFileAction`]: { verb: 'take-in-file', given: sent({ file }) },
  [`${TAKE_IN}/actions.ts takeInFileAction`]: {
    verb: 'take-in-file',
    given: sent({ file, draft, name: 'walked' }),
    comes: 'invalid',
  },
};
