import type { Monitor } from '../../../facility/site';
import type { RuleContext } from '../rule';

/** Gateways, router and host that the alarms of a system travel through; none for a system without alarms. */
export function alarmPathOf({ facility, system }: RuleContext): Monitor[] {
  if (system.alarms.length === 0) return [];
  const named = new Set(system.sensors.map(({ gateway }) => gateway));
  for (const { on } of system.alarms) if (on.kind === 'silent') named.add(on.gateway);
  return facility.monitors.filter(({ kind, key }) => kind !== 'gateway' || named.has(key));
}
