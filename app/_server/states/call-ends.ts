import 'server-only';
import type { Channel } from '#core/alarms/channels';
import { rosterAt } from '#core/alarms/roster';
import { type Roster, tellFirst, tellNext, type Telling } from '#core/alarms/to-tell';
import { MOST_TRIES, turnOf } from '#core/states/end-calls';
import { findAccount } from '#data/accounts/accounts';
import { findTellable, waysTo } from '#data/alarms/calls';
import { newId } from '#data/new-id';
import { listSites, type SiteEntry } from '#data/sites';
import { addStateCall, listStateCalls, type StateCall } from '#data/states/state-calls';
import { type StateRun, statesBegun } from '#data/states/states';
import { inTransaction } from '#data/transaction';
import { SEND } from '../calls/send';
import { dayIn } from '../local-day';
import { storedSite } from '../reviews/stored-site';
import { rotaOf } from '../rota/rota-of';
import { endMessage } from './end-message';

const MINUTE_MS = 60_000;

/**
 * Calls for every state that has outstayed its end: whoever is on, then the next step, for as long as nobody ends it or puts
 * its end off. One that an alarm of its system watches is left to that alarm. An attempt is noted once it was made: whoever
 * dies in between tells twice, and nobody is left out.
 *
 * @param at   the present
 */
export async function callEnds(at: Date): Promise<void> {
  const sites = await listSites();
  const runs = await statesBegun(
    sites.map(({ id }) => id),
    at,
  );
  const late = runs.filter(({ outstayed }) => outstayed);
  for (const site of sites) {
    const own = late.filter(({ siteId }) => siteId === site.id);
    if (own.length > 0) await callOf(site, own, at);
  }
}

async function callOf(site: SiteEntry, runs: readonly StateRun[], at: Date): Promise<void> {
  const stored = await storedSite(site, dayIn(site.zone, at));
  if (!stored) return;
  const { facility } = stored;
  const unwatched = runs.filter(({ system, state }) => {
    const described = facility.systems.find(({ key }) => key === system.key);
    return !described?.alarms.some(({ on }) => on.kind === 'state-outstayed' && on.state === state);
  });
  if (unwatched.length === 0) return;
  const { exceptions } = await rotaOf(site.id, facility, at.getTime());
  const members = await inTransaction((tx) => findTellable(tx, site.id));
  const roster = rosterAt(facility, exceptions, members, at.getTime());
  for (const run of unwatched) await callRun(site, run, roster, at);
}

async function callRun(site: SiteEntry, run: StateRun, roster: Roster, at: Date): Promise<void> {
  const turn = turnOf((at.getTime() - run.until.getTime()) / MINUTE_MS);
  const before = (await listStateCalls(site.id, run.run, run.until)).filter((call) => call.turn === turn);
  const accounts = accountsOf(run, turn, roster);
  const ways = await inTransaction((tx) =>
    waysTo(
      tx,
      site.id,
      accounts.map((accountId) => ({ accountId })),
    ),
  );
  for (const accountId of accounts)
    for (const channel of ways.get(accountId) ?? (['mail'] as const)) {
      if (isDone(before, accountId, channel)) continue;
      await callOne(site, run, { accountId, channel, turn, at });
    }
}

/** Whoever began it is told first, with those who are on; later the steps of the site. */
function accountsOf({ begunBy }: StateRun, turn: number, roster: Roster): string[] {
  let telling: Telling = tellFirst('rota', roster);
  for (let step = 0; step < turn && step < (roster.steps?.length ?? 3); step++)
    telling = tellNext(telling.step, roster);
  const whom = telling.whom.map(({ account }) => account);
  const isMember = roster.members.some(({ account }) => account === begunBy);
  return [...new Set(turn === 0 && isMember ? [begunBy, ...whom] : whom)];
}

function isDone(before: readonly StateCall[], account: string, way: Channel): boolean {
  const tries = before.filter(({ accountId, channel }) => accountId === account && channel === way);
  return tries.length >= MOST_TRIES || tries.some(({ result }) => result !== 'failed');
}

async function callOne(
  site: SiteEntry,
  run: StateRun,
  { accountId, channel, turn, at }: Pick<StateCall, 'accountId' | 'channel' | 'turn' | 'at'>,
): Promise<void> {
  const account = await findAccount(accountId);
  if (!account || account.endedAt !== null) return;
  const id = newId();
  const to = { id, siteId: site.id, accountId, email: account.email, madeAt: at };
  const sent = await SEND[channel](to, endMessage({ to: account.name ?? account.email ?? '', site, run }));
  const { system, run: runId, until } = run;
  const call = { id, systemId: system.id, runId, until, turn, accountId, channel, at };
  await addStateCall(site.id, { ...call, result: sent.result, detail: sent.detail ?? null });
}
