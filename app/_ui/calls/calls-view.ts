import type { Channel } from '#core/alarms/channels';
import type { CallStep, StepWhom } from '#core/alarms/steps';
import type { ReachState } from '#core/alarms/test-calls';

/** Somebody who may be called. Instants in ISO, UTC. */
export interface CalledView {
  account: string;
  name: string;
  role: string;
  ways: Channel[];
  state: ReachState;
  reachedAt: string | null;
  reachedBy: 'test' | 'alarm' | null;
  channel: Channel | null;
  testAt: string | null;
  isYou: boolean;
}

/** How the people of a site are called. */
export interface CallsView {
  site: { key: string; name: string; zone: string };
  steps: { given: CallStep[]; isUsual: boolean; repeatMin: number };
  eachDays: number;
  people: CalledView[];
  ownTest: string | null;
  isMailed: boolean;
  webhook: { host: string; url: string | null; since: string } | null;
  mayAnswer: boolean;
  mayCallOthers: boolean;
  mayWebhook: boolean;
}

/** Whom a step calls. */
export const WHOM_WORDS: Readonly<Record<StepWhom, string>> = {
  on: 'whoever is on, on site and on call',
  'on-site': 'whoever is on site',
  'on-call': 'whoever is on call',
  lead: 'leads',
  manager: 'managers',
  everyone: 'everyone: whoever is on, leads and managers',
};

/** How it stands with reaching somebody. */
export const STATE_WORDS: Readonly<Record<ReachState, string>> = {
  reached: 'reached',
  asked: 'called for a test, no answer yet',
  missed: 'missed the last test call',
  'long-ago': 'not reached for too long',
  never: 'never reached',
};
