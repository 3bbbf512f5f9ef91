import 'server-only';
import type { System } from '#core/facility/system';
import { type Begun, hasHandsIn, type Proof, proofsOf } from '#core/states/state-end';
import { accountNames } from '#data/accounts/names';
import { newId } from '#data/new-id';
import type { StateRun } from '#data/states/states';

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
  /** What to look at when it ends. */
  proofs: Proof[];
  /** Types of the equipment there is, for the cautions. */
  equipment: string[];
  /** Ids for what is done with it next. */
  entries: { putOff: string; end: string };
}

/** States in plain values, told by names. @param systems those of the site */
export async function stateLines(runs: readonly StateRun[], systems: readonly System[]): Promise<StateLine[]> {
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
        proofs: proofsOf(described, run.state),
        equipment: [...new Set(described.equipment.map(({ type }) => type))],
        entries: { putOff: newId(), end: newId() },
      },
    ];
  });
}
