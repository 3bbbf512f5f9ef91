import 'server-only';
import type { Facility } from '#core/facility/facility';
import { isOff } from '#core/plans/credit';
import { listOpenAlarms } from '#data/alarms/told';
import type { SiteEntry } from '#data/sites';
import { statesInForce } from '#data/states/states';
import { suppressedLines } from '../alarms/suppressed-lines';

/** What whoever comes to a system has to know first. */
export interface Stands {
  /** Safeguards that are out of service, and until which day. */
  off: { name: string; until: string }[];
  /** Alarms that are active, or that nobody has acknowledged. Times are UTC, ISO. */
  alarms: { id: string; name: string; raisedAt: string; isActive: boolean; isAcknowledged: boolean }[];
  states: { state: string; until: string; outstayed: boolean }[];
  /** Alarms that call nobody: what keeps them from it, and until when at the latest. */
  suppressed: { run: string; name: string; how: string; until: string; isActive: boolean }[];
}

const HOW = { shelved: 'shelved', 'by-design': 'suppressed by design' } as const;

/**
 * What stands at the systems of a site on a day, by the key of the system; null for the site itself. Three questions.
 *
 * @param today   ISO date at the site
 */
export async function whatStands(
  site: Pick<SiteEntry, 'id'>,
  facility: Facility,
  today: string,
  at: Date,
): Promise<(system: string | null) => Stands> {
  const [alarms, states, suppressed] = await Promise.all([
    listOpenAlarms(site.id),
    statesInForce(site.id, at),
    suppressedLines(site.id),
  ]);
  return (key) => {
    const owner = key === null ? facility : facility.systems.find((system) => system.key === key);
    const off = owner?.safeguards.filter((safeguard) => isOff(safeguard, today)) ?? [];
    return {
      off: off.map((safeguard) => ({ name: safeguard.name, until: safeguard.off?.until ?? today })),
      alarms: alarms
        .filter(({ system, state }) => system.key === key && !state.startsWith('suppressed'))
        .map(({ id, definition, raisedAt, returnedAt, acknowledged }) => ({
          id,
          name: definition.name,
          raisedAt: raisedAt.toISOString(),
          isActive: returnedAt === null,
          isAcknowledged: acknowledged !== null,
        })),
      states: states
        .filter(({ system }) => system.key === key)
        .map(({ state, until, outstayed }) => ({ state, until: until.toISOString(), outstayed })),
      suppressed: suppressed
        .filter(({ system }) => system.key === key)
        .map(({ run, name, kind, owner, until, active }) => ({
          run,
          name,
          how: kind === 'out-of-service' ? `out of service, in the hands of ${owner ?? 'somebody'}` : HOW[kind],
          until,
          isActive: active !== null,
        })),
    };
  };
}
