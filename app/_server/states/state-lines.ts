import 'server-only';
import type { System } from '#core/facility/system';
import { authorisedUntil, type Begun, hasHandsIn } from '#core/states/state-end';
import { accountNames } from '#data/accounts/names';
import { newId } from '#data/new-id';
import { newestReadings } from '#data/readings/newest';
import type { StateRun } from '#data/states/states';
import { lastAuthorised } from '#data/states/watched';
import { provedNow, type ProvedLine } from './proved-now';

/** A state a system is in, in plain values; instants are ISO 8601 in UTC. */
export interface StateLine {
  run: string;
  system: { key: string; name: string };
  state: Begun;
  begunAt: string;
  begunBy: string;
  note: string | null;
  until: string;
  endsItself: boolean;
  outstayed: boolean;
  isOver: boolean;
  hasHandsIn: boolean;
  putOff: { at: string; by: string; until: string; note: string | null }[];
  /** What proves its end, with what readings say of it now. */
  proofs: ProvedLine[];
  /** Types of the equipment there is, for the cautions. */
  equipment: string[];
  /** Ids for what is done with it next. */
  /** Until when it may go on without a lead saying so anew; null where nobody has to. */
  authority: { until: string; isOver: boolean } | null;
  entries: { putOff: string; end: string; authorise: string };
}

/** States of a site in plain values, told by names. @param systems those of the site */
export async function stateLines(
  runs: readonly StateRun[],
  systems: readonly System[],
  { siteId, at }: { siteId: string; at: Date },
): Promise<StateLine[]> {
  const newest = await newestReadings(siteId, [...new Set(runs.map(({ system }) => system.id))]);
  const leave = await lastAuthorised(
    siteId,
    runs.map(({ run }) => run),
  );
  const names = await accountNames(runs.flatMap(({ begunBy, putOff }) => [begunBy, ...putOff.map(({ by }) => by)]));
  const nameOf = (id: string) => names.get(id) ?? id;
  return runs.flatMap(({ siteId: _, system, begunAt, begunBy, until, putOff, ...run }) => {
    const described = systems.find(({ key }) => key === system.key);
    if (!described) return [];
    return [
      {
        ...run,
        system: { key: system.key, name: system.name },
        begunAt: begunAt.toISOString(),
        begunBy: nameOf(begunBy),
        until: until.toISOString(),
        hasHandsIn: hasHandsIn(run.state),
        putOff: putOff.map((one) => ({
          at: one.at.toISOString(),
          by: nameOf(one.by),
          until: one.until.toISOString(),
          note: one.note,
        })),
        proofs: provedNow(described, run.state, newest.get(system.id), { begunAt, at }),
        equipment: [...new Set(described.equipment.map(({ type }) => type))],
        authority: authorityOf(run.state, leave.get(run.run)?.at ?? begunAt, at),
        entries: { putOff: newId(), end: newId(), authorise: newId() },
      },
    ];
  });
}

function authorityOf(state: Begun, since: Date, at: Date): StateLine['authority'] {
  const until = authorisedUntil(state, since.getTime());
  return until === null ? null : { until: new Date(until).toISOString(), isOver: until <= at.getTime() };
}
