import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Begun } from '#core/states/state-end';
import { newId } from '#data/new-id';
import { openAsked } from '#data/states/asked';
import type { StateRun } from '#data/states/states';

/** A state that looks as if it had begun; instants are ISO 8601 in UTC. */
export interface AskedLine {
  asked: string;
  system: { key: string; name: string };
  state: Begun;
  why: 'watts' | 'clock';
  since: string;
  /** Names of the equipment that stands still. */
  equipment: string[];
  entry: string;
}

/** ms for which it is asked: later nobody remembers. Common practice, no source. */
const ASKED_MS = 12 * 3_600_000;

/** What of a site looks as if it had begun, and nobody has answered. @param inForce   states it is known to be in */
export async function askedLines(
  siteId: string,
  { facility, systemIds }: { facility: Facility; systemIds: ReadonlyMap<string, string> },
  inForce: readonly StateRun[],
  at: Date,
): Promise<AskedLine[]> {
  const rows = await openAsked(siteId, new Date(at.getTime() - ASKED_MS));
  const keys = new Map([...systemIds].map(([key, id]) => [id, key]));
  return rows.flatMap(({ id: asked, systemId, state, why, since, detail }) => {
    const system = facility.systems.find(({ key }) => key === keys.get(systemId));
    if (!system || inForce.some((run) => run.system.id === systemId && run.state === state && !run.isOver)) return [];
    const equipment = system.equipment.filter(({ key }) => detail.equipment.includes(key)).map(({ name }) => name);
    const { key, name } = system;
    return [{ asked, system: { key, name }, state, why, since: since.toISOString(), equipment, entry: newId() }];
  });
}
