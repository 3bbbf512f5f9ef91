import { changesOf, type Happening, NEW, type OpenTime } from '#core/alarms/life/changes';
import type { AlarmChange, AlarmState } from '#core/alarms/life/machine';
import { after, isOpen, raised, stateOf } from '#core/alarms/known';
import type { Standard } from './standard';

export type Suppressed = 'SHLV' | 'SUPR' | 'OOS';

/** An alarm that a test can do things to, in memory or in a database. */
export interface RunAlarm {
  condition: (holds: boolean) => Promise<void>;
  acknowledge: () => Promise<void>;
  reset: () => Promise<void>;
  realarm: () => Promise<void>;
  suppress: (by: Suppressed) => Promise<void>;
  unsuppress: (by: Suppressed) => Promise<void>;
  state: () => Promise<Standard>;
}

const OF_STATE: Readonly<Record<AlarmState, Standard | null>> = {
  unacknowledged: 'UNACK',
  acknowledged: 'ACK',
  returned: 'RTN',
  'latched-unacknowledged': 'LUNACK',
  'latched-acknowledged': 'LACK',
  over: 'NORM',
  suppressed: null,
  'suppressed-latched-unacknowledged': null,
  'suppressed-latched-acknowledged': null,
};

/** The state of an alarm in the words of the standard: of what suppresses it, or of the newest time it was raised. */
export function standardState(suppressed: Suppressed | null, newest: AlarmState | undefined): Standard {
  if (suppressed !== null) return suppressed;
  const state = OF_STATE[newest ?? 'over'];
  if (state === null) throw new Error(`${newest} though nothing suppresses it`);
  return state;
}

/** An alarm in memory, moved by the product's own rules. */
export function alarmInMemory(latched: boolean): RunAlarm {
  const times: OpenTime[] = [];
  let by: Suppressed | null = null;
  const change = (id: string, what: AlarmChange): void => {
    const at = times.findIndex((one) => one.id === id);
    const one = times[at];
    const known = one && after(one, what);
    if (known) times[at] = { ...one, ...known };
  };
  const happen = (happening: Happening): void => {
    for (const { id, changes } of changesOf(happening, times.filter(isOpen), by !== null)) {
      const own = id === NEW ? String(times.length) : id;
      for (const what of changes) {
        if (what === 'raised') times.push({ id: own, ...raised(latched) });
        else change(own, what);
      }
    }
  };
  const ofNewest = (what: AlarmChange) => async () => change(String(times.length - 1), what);
  return {
    condition: async (holds) => happen(holds ? 'condition-true' : 'condition-false'),
    acknowledge: ofNewest('acknowledged'),
    reset: ofNewest('reset'),
    realarm: ofNewest('recalled'),
    suppress: async (kind) => {
      if (by !== null) return;
      happen('suppressed');
      by = kind;
    },
    unsuppress: async (kind) => {
      if (by !== kind) return;
      by = null;
      happen('unsuppressed');
    },
    state: async () => {
      const newest = times.at(-1);
      return standardState(by, newest && stateOf(newest));
    },
  };
}
