import { type AlarmSource, sensorsNamed } from '../alarms/definition';
import type { Sensor, System } from '../facility/system';
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
    return sensorsHeld(system, alarm.on).some(
      ({ key, gateway }) =>
        (gateway !== undefined && silent.has(gateway)) || (!watchesSensors(alarm.on) && upset.probes.has(key)),
    );
  });
  const locks = system.equipment.flatMap(({ plan }) =>
    plan.interlocks.filter((l) => l.when.kind === 'sensor' && upset.probes.has(l.when.sensor)),
  );
  const keys = new Set(locks.map((l) => l.safeguard));
  const safeguards = safeguardsOf(facility, system).filter((s) => keys.has(s.key));
  return [...alarms, ...safeguards].map(({ name }) => name);
}

/** Sensors without whose word an alarm stays silent. */
function sensorsHeld(system: System, on: AlarmSource): Sensor[] {
  if (on.kind === 'silent-sensor') return [];
  const named = sensorsNamed(on);
  const meter = named.length === 0 && (on.kind === 'watts' || on.kind === 'run-limit') ? on.equipment : undefined;
  return system.sensors.filter(
    ({ key, quantity, equipment }) =>
      named.includes(key) || (meter !== undefined && quantity === 'watts' && equipment === meter),
  );
}

/** Whether what befalls a sensor is what an alarm calls for. */
function watchesSensors({ kind }: AlarmSource): boolean {
  return kind === 'frozen' || kind === 'deviation';
}
