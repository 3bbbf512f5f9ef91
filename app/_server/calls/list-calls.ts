import 'server-only';
import type { z } from 'zod';
import type { Channel } from '#core/alarms/channels';
import { type CallStep, REPEAT_CALLS_MIN, TEST_CALL_EACH_DAYS, USUAL_STEPS } from '#core/alarms/steps';
import { lastReached, type ReachState, reachState } from '#core/alarms/test-calls';
import { ok, type Result } from '#core/result';
import { ROLES, type Role } from '#core/rota/rota';
import { listReached, neverReached, type ReachedRow } from '#data/calls/test-calls';
import { type MemberWays, waysOf } from '#data/calls/ways';
import { findWebhook } from '#data/calls/webhooks';
import { callsPlace } from '#shape/calls/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { isMailConfigured } from '../mail/send-mail';
import { findStoredSite } from '../reviews/find-stored-site';

/** Somebody who may be called. Instants in ISO, UTC. */
export interface CalledPerson {
  account: string;
  name: string;
  role: Role;
  /** By which ways there is a way to them. */
  ways: Channel[];
  state: ReachState;
  /** When they were last reached, and by what. */
  reachedAt: string | null;
  reachedBy: 'test' | 'alarm' | null;
  /** By which way the newest answered test came, as they said. */
  channel: Channel | null;
  testAt: string | null;
  isYou: boolean;
}

/** How the people of a site are called. */
export interface CallsPage {
  site: { key: string; name: string; zone: string };
  /** Minutes after which the last step is repeated, besides. */
  steps: { given: CallStep[]; isUsual: boolean; repeatMin: number };
  eachDays: number;
  people: CalledPerson[];
  /** One's own test call that waits for its answer. */
  ownTest: string | null;
  isMailed: boolean;
  /** Where calls are posted besides; the whole address only for whoever may change it. */
  webhook: { host: string; url: string | null; since: string } | null;
  mayAnswer: boolean;
  mayCallOthers: boolean;
  mayWebhook: boolean;
}

export const listCallsShape = callsPlace;

/** ms of the past in which an acknowledged alarm is looked for. */
const LOOKED_MS = 366 * 86_400_000;

/** How the people of a site are called, step by step and by which ways, and who was reached when. */
export async function listCalls(
  who: Who,
  { site }: z.output<typeof listCallsShape>,
): Promise<Result<CallsPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const {
    callSteps,
    repeatCallsMin: repeatMin = REPEAT_CALLS_MIN,
    testCallEachDays: eachDays = TEST_CALL_EACH_DAYS,
  } = stored.facility.site;
  const at = now();
  const [reached, members, webhook] = await Promise.all([
    listReached(entry.id, new Date(at.getTime() - LOOKED_MS)),
    waysOf(entry.id),
    findWebhook(entry.id),
  ]);
  const mayWebhook = may(who, 'call-webhook', site);
  const isMailed = isMailConfigured();
  const known = { reached, eachDays, at, isMailed, hasWebhook: webhook !== null, you: who.id };
  const people = members
    .filter(({ role }) => ROLES.indexOf(role) >= ROLES.indexOf('aquarist'))
    .map((member) => personOf(member, known));
  const own = reached.get(who.id);
  return ok({
    site: { key: site, name: entry.name, zone: entry.zone },
    steps: { given: [...(callSteps ?? USUAL_STEPS)], isUsual: callSteps === undefined, repeatMin },
    eachDays,
    people,
    ownTest: own?.test && own.test.answeredMs === null ? own.testId : null,
    isMailed,
    webhook: webhook && {
      host: new URL(webhook.url).host,
      url: mayWebhook ? webhook.url : null,
      since: webhook.createdAt.toISOString(),
    },
    mayAnswer: may(who, 'acknowledge', site),
    mayCallOthers: may(who, 'describe', site),
    mayWebhook,
  });
}

interface Known {
  reached: ReadonlyMap<string, ReachedRow>;
  eachDays: number;
  at: Date;
  isMailed: boolean;
  hasWebhook: boolean;
  /** Account of whoever asks. */
  you: string;
}

function personOf({ account, name, role, email, devices }: MemberWays, known: Known): CalledPerson {
  const row = known.reached.get(account) ?? neverReached(account);
  const last = lastReached(row);
  const ways: Channel[] = [
    ...(email && known.isMailed ? (['mail'] as const) : []),
    ...(devices > 0 ? (['push'] as const) : []),
    ...(known.hasWebhook ? (['webhook'] as const) : []),
  ];
  return {
    ...{ account, name: name ?? 'somebody', role, ways },
    state: reachState(row, known.at.getTime(), known.eachDays),
    reachedAt: last === null ? null : new Date(last).toISOString(),
    reachedBy: last === null ? null : last === row.answeredMs ? 'test' : 'alarm',
    channel: row.channel,
    testAt: row.test && new Date(row.test.madeMs).toISOString(),
    isYou: account === known.you,
  };
}
