import 'server-only';
import type { Doer, TimelineLine } from '#core/incidents/timeline';
import type { NearPlan, NearSafeguard, NearState } from '#data/incidents/near-changes';
import { timeIn } from '../../local-day';

type DoerOf = (id: string | null) => Doer | null;

const MINUTES = 16;
const STATES: Readonly<Record<string, string>> = {
  begun: 'begun',
  'put-off': 'put off',
  ended: 'ended',
  looked: 'looked after',
  authorised: 'let go on',
};

/** States that were begun, put off and ended. @param zone IANA zone of the site */
export function stateLines(states: readonly NearState[], doerOf: DoerOf, zone: string): TimelineLine[] {
  return states.map(({ id, at, state, kind, until, by, note, system }) => {
    const end = until ? `, meant to end ${timeIn(zone, until).slice(0, MINUTES)}` : '';
    const what = `${system.name}: ${state.replaceAll('-', ' ')} ${STATES[kind] ?? kind}${end}${note ? `. ${note}` : ''}`;
    return { id, atMs: at.getTime(), topic: 'state', what, who: doerOf(by), source: 'witness' };
  });
}

/** Plan versions that came into force. */
export function planLines(plans: readonly NearPlan[], doerOf: DoerOf): TimelineLine[] {
  return plans.map(({ equipmentId, version, at, equipment, by, reason }) => ({
    id: `${equipmentId}/${version}`,
    atMs: at.getTime(),
    topic: 'plan',
    what: `Plan of ${equipment}, version ${version}, came into force${reason ? `: ${reason}` : ''}`,
    who: doerOf(by),
    source: 'witness',
  }));
}

/** Safeguards that were taken off, put back and tested. */
export function safeguardLines(changes: readonly NearSafeguard[], doerOf: DoerOf): TimelineLine[] {
  return changes.map((change) => ({
    id: `record-${change.seq}`,
    atMs: change.at.getTime(),
    topic: 'safeguard',
    what: safeguardSaid(change),
    who: doerOf(change.by),
    source: 'witness',
    ...(change.kind === 'safeguard-off' || change.result === 'failed' ? { isAbnormal: true } : {}),
  }));
}

function safeguardSaid({ kind, name, result, until, why }: NearSafeguard): string {
  switch (kind) {
    case 'safeguard-off':
      return `${name} taken out of service until ${until ?? '–'}: ${why ?? ''}`;
    case 'safeguard-back':
      return `${name} put back`;
    default:
      return `${name} tested: it ${result ?? '–'}`;
  }
}
