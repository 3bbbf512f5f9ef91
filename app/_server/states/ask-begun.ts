import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { siteDays, type SiteDays } from '#core/rounds/schedule';
import { type Drawn, inferStates } from '#core/states/infer';
import { type Begun, endsItself, hasHandsIn } from '#core/states/state-end';
import { timedDue } from '#core/states/timed';
import { newId } from '#data/new-id';
import { news } from '#data/news';
import { drawnSince, type DrawnRow } from '#data/readings/drawn';
import { appendRecords } from '#data/records/append-records';
import { listSites, type SiteEntry } from '#data/sites';
import { answerAsked, askState } from '#data/states/asked';
import { beginState } from '#data/states/change-state';
import { holdSystem, openStates, type StateRun, statesBegun } from '#data/states/states';
import { listTimed, type StateTimedRow } from '#data/states/timed';
import { inTransaction } from '#data/transaction';
import { dayIn } from '../local-day';
import { storedSite } from '../reviews/stored-site';

/** ms back that what was drawn is looked at: what stands still for longer has been asked of before. */
const BACK_MS = 30 * 60_000;

/**
 * Begins the states that the clock begins, and asks where the watts look as if somebody had begun one without saying so. A state
 * with hands in the water is only asked about: no clock knows whether hands are in it.
 *
 * @param at   the present
 */
export async function askBegun(at: Date): Promise<void> {
  const sites = await listSites();
  const ids = sites.map(({ id }) => id);
  const [timed, begun] = await Promise.all([listTimed(ids), statesBegun(ids, at)]);
  for (const site of sites) {
    const stored = await storedSite(site, dayIn(site.zone, at));
    if (!stored) continue;
    const keyOf = new Map([...stored.systemIds].map(([key, id]) => [id, key]));
    const systemOf = (id: string) => stored.facility.systems.find(({ key }) => key === keyOf.get(id));
    for (const one of timed.filter(({ siteId }) => siteId === site.id)) {
      const system = systemOf(one.systemId);
      if (system) await byClock(site, one, system, { days: siteDays(stored.facility.site), at });
    }
    const own = begun.filter(({ siteId }) => siteId === site.id);
    await byWatts(site, stored, own, at);
  }
}

async function byClock(
  site: SiteEntry,
  timed: StateTimedRow,
  system: System,
  { days, at }: { days: SiteDays; at: Date },
): Promise<void> {
  const due = timedDue(timed.schedule, days, at.getTime());
  if (due === null) return;
  const { systemId, state, by, lastsMin } = timed;
  const since = new Date(due);
  await inTransaction(async (tx) => {
    await holdSystem(tx, site.id, system.key);
    const open = await openStates(tx, site.id, systemId);
    if (open.some((one) => one.state === state && !(one.endsItself && one.until <= since))) return;
    const id = newId();
    const asked = { id, systemId, state, why: 'clock', since, askedAt: at, detail: { equipment: [] } } as const;
    if (!(await askState(tx, site.id, asked))) return;
    await news(tx, site.id, 'states');
    if (hasHandsIn(state)) return;
    const run = newId();
    const until = new Date(due + lastsMin * 60_000);
    const act = { id: run, run, systemId, state, at: since, by, note: 'begun by the clock' };
    await beginState(tx, site.id, { ...act, until, endsItself: endsItself(system, state) });
    await answerAsked(tx, site.id, id, { at, by, runId: run });
    const body = { by, system: systemId, state, run, until: until.toISOString(), note: act.note };
    await appendRecords(tx, site.id, [{ kind: 'state-begun', body }], at);
  });
}

async function byWatts(
  site: SiteEntry,
  { facility, systemIds }: { facility: Facility; systemIds: ReadonlyMap<string, string> },
  begun: readonly StateRun[],
  at: Date,
): Promise<void> {
  const asking = facility.systems.filter(canTell);
  if (asking.length === 0) return;
  const rows = await drawnSince(site.id, new Date(at.getTime() - BACK_MS));
  for (const system of asking) {
    const systemId = systemIds.get(system.key);
    if (systemId === undefined) continue;
    const inForce = new Set<Begun>(begun.flatMap((run) => (run.system.id === systemId ? [run.state] : [])));
    for (const { state, sinceMs, equipment } of inferStates(system, drawnBy(rows, systemId), inForce, at.getTime()))
      await inTransaction(async (tx) => {
        const since = new Date(sinceMs);
        const asked = {
          id: newId(),
          systemId,
          state,
          why: 'watts',
          since,
          askedAt: at,
          detail: { equipment },
        } as const;
        if (await askState(tx, site.id, asked)) await news(tx, site.id, 'states');
      });
  }
}

/** Whether watts can tell of a state: something that runs all the time, that a state switches off, has a meter. */
function canTell({ equipment, sensors, states }: System): boolean {
  return equipment.some(
    ({ key, plan }) =>
      plan.regulation.kind === 'always' &&
      plan.states.some((line) => line.then === 'off' && states.some(({ name }) => name === line.state)) &&
      sensors.some((sensor) => sensor.quantity === 'watts' && sensor.equipment === key),
  );
}

function drawnBy(rows: readonly DrawnRow[], systemId: string): Map<string, Drawn> {
  const by = new Map<string, { atMs: number; w: number }[]>();
  for (const { equipment, atMs, w } of rows.filter((row) => row.systemId === systemId))
    by.set(equipment, [...(by.get(equipment) ?? []), { atMs, w }]);
  return by;
}
