import 'server-only';
import { TEST_CALL_EACH_DAYS } from '#core/alarms/steps';
import { isTestDue } from '#core/alarms/test-calls';
import type { Facility } from '#core/facility/facility';
import { ROLES } from '#core/rota/rota';
import { wallClock } from '#core/time/zone';
import { findTellable } from '#data/alarms/calls';
import { listReached, neverReached } from '#data/calls/test-calls';
import { findWebhook } from '#data/calls/webhooks';
import { loadFacility } from '#data/facility/load-facility';
import { listDemoSites, listSites, type SiteEntry } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { isMailConfigured } from '../mail/send-mail';
import { callForTest } from './make-test-call';
import { measurePeople } from './measure-people';

/** ms of the past in which an acknowledged alarm is looked for. */
const LOOKED_MS = 366 * 86_400_000;

/**
 * Calls everybody for a test who is due one, at every site but those of the demonstration, and measures anew what the record says
 * of people.
 *
 * @param at   the present
 */
export async function dueTestCalls(at: Date): Promise<void> {
  const invented = new Set(await listDemoSites());
  for (const site of await listSites()) {
    if (invented.has(site.key)) continue;
    const loaded = await loadFacility(site.id);
    if (loaded) await callDue(site, loaded.facility, at);
    await measurePeople(site.id, at);
  }
}

async function callDue(site: SiteEntry, facility: Facility, at: Date): Promise<void> {
  // Without any way out, each day would only add that there is none; the page of the calls says so.
  if (!isMailConfigured() && (await findWebhook(site.id)) === null) return;
  const nowMs = at.getTime();
  const { time } = wallClock(site.zone, nowMs);
  const eachDays = facility.site.testCallEachDays ?? TEST_CALL_EACH_DAYS;
  await inTransaction(async (tx) => {
    const reached = await listReached(site.id, new Date(nowMs - LOOKED_MS));
    for (const { account, role, person, isElsewhere } of await findTellable(tx, site.id)) {
      if (isElsewhere || ROLES.indexOf(role) < ROLES.indexOf('aquarist')) continue;
      const quiet = facility.people.find(({ key }) => key === person)?.quiet;
      if (isTestDue(reached.get(account) ?? neverReached(account), { nowMs, time, eachDays, quiet }))
        await callForTest(tx, site.id, { accountId: account, by: null }, at);
    }
  });
}
