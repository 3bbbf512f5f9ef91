import { randomUUID } from 'node:crypto';
import type { Line } from './line';

const ALARMS = 'app/(house)/sites/[site]/alarms';
const KEYS = 'app/(house)/sites/[site]/keys';
const CALL_OUTS = 'app/(house)/sites/[site]/call-outs';
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
  [`${ALARMS}/actions.ts callForHelpAction`]: {
    verb: 'call-for-help',
    given: () => ({ form: { call: randomUUID(), system: 'no-such-system', what: 'Water on the floor' } }),
    comes: 'not-found',
  },
  [`${ALARMS}/actions.ts rightAgainAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { occurrence: NONE, note: 'Dry again' } }),
    comes: 'not-found',
  },
  [`${ALARMS}/calls/page.tsx`]: { verb: 'see' },
  [`${ALARMS}/performance/page.tsx`]: { verb: 'see' },
  // Each calls themselves; whom else, the use case's own test says.
  [`${ALARMS}/calls/actions.ts makeTestCallAction`]: { verb: 'acknowledge' },
  [`${ALARMS}/calls/actions.ts answerTestCallAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { test: NONE } }),
    comes: 'not-found',
  },
  [`${ALARMS}/calls/actions.ts setWebhookAction`]: {
    verb: 'call-webhook',
    given: () => ({ form: { url: 'https://127.0.0.1/' } }),
    comes: 'invalid',
  },
  [`${ALARMS}/calls/actions.ts removeWebhookAction`]: { verb: 'call-webhook', comes: 'not-found' },
  [`${ALARMS}/actions.ts noteAlarmAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { occurrence: NONE, note: 'seen' } }),
    comes: 'not-found',
  },
  [`${ALARMS}/suppressed/page.tsx`]: { verb: 'see' },
  [`${ALARMS}/actions.ts resetAlarmAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { occurrence: NONE } }),
    comes: 'not-found',
  },
  [`${ALARMS}/actions.ts shelveAlarmAction`]: {
    verb: 'shelve-alarm',
    given: () => ({ form: { alarm: NONE, hours: '1', reason: 'probe in its buffer' } }),
    comes: 'not-found',
  },
  [`${ALARMS}/actions.ts takeOutOfServiceAction`]: {
    verb: 'alarm-out-of-service',
    given: async (site, make) => ({
      form: { alarm: NONE, hours: '1', unit: 'days', owner: await make.member(site), reason: 'probe ordered' },
    }),
    comes: 'not-found',
  },
  [`${ALARMS}/actions.ts endSuppressionAction`]: {
    verb: 'shelve-alarm',
    given: () => ({ form: { run: NONE } }),
    comes: 'not-found',
  },
  [`${CALL_OUTS}/page.tsx`]: { verb: 'see' },
  [`${CALL_OUTS}/actions.ts beginCallOutAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { place: 'pump room', minutes: '30', named: NONE } }),
    comes: 'not-found',
  },
  [`${CALL_OUTS}/actions.ts goAloneAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { occurrence: NONE } }),
    comes: 'not-found',
  },
  [`${CALL_OUTS}/actions.ts extendCallOutAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { callOut: NONE, minutes: '15' } }),
    comes: 'not-found',
  },
  [`${CALL_OUTS}/actions.ts seeToCallOutAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { callOut: NONE } }),
    comes: 'not-found',
  },
  [`${CALL_OUTS}/actions.ts endCallOutAction`]: {
    verb: 'acknowledge',
    given: () => ({ form: { callOut: NONE } }),
    comes: 'not-found',
  },
  [`${KEYS}/page.tsx`]: { verb: 'hand-over' },
  [`${KEYS}/actions.ts handKeyAction`]: {
    verb: 'hand-over',
    given: () => ({ form: { key: 'Pump room', holder: NONE } }),
    comes: 'not-found',
  },
};
