import { safeguardsOf } from '../plans/credit';
import type { Context } from './context';
import { type Subject, upsetOf } from './trial';

/** Names of the alarms and safeguards that a fault silently puts out of action; an alarm that nobody answers is none. */
export function disabledBy(context: Context, subject: Subject): string[] {
  const { facility, system } = context;
  const upset = upsetOf(context, subject);
  const dead = (circuit: string | undefined) => circuit !== undefined && upset.deadCircuits.has(circuit);
  const silent = new Set(
    facility.monitors.filter((m) => upset.deadMonitors.has(m.key) || dead(m.circuit)).map((m) => m.key),
  );
  const wayGone = facility.monitors.some((m) => m.kind !== 'gateway' && silent.has(m.key));
  const alarms = system.alarms.filter((alarm) => {
    if (alarm.answeredBy === 'nobody') return false;
    if (wayGone || upset.nobodyAnswers || upset.mutedAlarms.has(alarm.key)) return true;
    // Silence is what these call for.
    if (alarm.on.kind === 'silent' || alarm.on.kind === 'silent-sensor') return false;
    const source = alarm.on;
    const sensor = system.sensors.find((s) =>
      source.kind === 'sensor' ? s.key === source.sensor : s.quantity === 'watts' && s.equipment === source.equipment,
    );
    return (
      (sensor?.gateway !== undefined && silent.has(sensor.gateway)) ||
      (sensor !== undefined && upset.probes.has(sensor.key))
    );
  });
  const locks = system.equipment.flatMap(({ plan }) =>
    plan.interlocks.filter((l) => l.when.kind === 'sensor' && upset.probes.has(l.when.sensor)),
  );
  const keys = new Set(locks.map((l) => l.safeguard));
  const safeguards = safeguardsOf(facility, system).filter((s) => keys.has(s.key));
  return [...alarms, ...safeguards].map(({ name }) => name);
}
