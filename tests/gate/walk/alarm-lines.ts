import type { Line } from './line';

const ALARMS = 'app/(house)/sites/[site]/alarms';
/** An alarm that was never raised. */
const NONE = '019ac000-0000-7000-8000-000000000000';

/** Entries about the alarms of a site, and the stream that says that something has changed. */
export const ALARM_LINES: Readonly<Record<string, Line>> = {
  'app/api/live/[site]/route.ts GET': { verb: 'see' },
  [`${ALARMS}/page.tsx`]: { verb: 'see' },
  [`${ALARMS}/[occurrence]/page.tsx`]: {
    verb: 'see',
    given: () => ({ params: { occurrence: NONE } }),
    comes: 'not-found',
  },
  [`${ALARMS}/actions.ts acknowledgeAlarmAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { occurrence: NONE } }),
    comes: 'not-found',
  },
  [`${ALARMS}/actions.ts noteAlarmAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { occurrence: NONE, note: 'seen' } }),
    comes: 'not-found',
  },
};
