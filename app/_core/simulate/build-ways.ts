import type { Sensor } from '../facility/system';
import type { Build } from './build';
import { steady } from './build-supply';
import type { PowerPhase } from './device';

/** When a part of the way has power; never, when it is unknown or out of order. */
export function monitorSupply(build: Build, key: string): PowerPhase[] {
  const monitor = build.facility.monitors.find((m) => m.key === key);
  if (!monitor || build.upset.deadMonitors.has(key)) return steady(false);
  return build.supply(monitor.circuit);
}

/** When each part of the way of some kinds has power. */
export function ofKind(build: Build, kinds: readonly string[]): PowerPhase[][] {
  return build.facility.monitors.filter((m) => kinds.includes(m.kind)).map((m) => monitorSupply(build, m.key));
}

/** What must live for a meter's word to be carried. Of flow and power it is only known whether they are as they should be: a meter that lies says so always. */
export function wayOf(build: Build, meter: Sensor | undefined): PowerPhase[][] {
  const lies = meter !== undefined && build.upset.probes.has(meter.key);
  return lies ? [steady(false)] : gatewaysOf(build, meter?.gateway);
}

/** The gateway named, or with none named every gateway there is (which one carries it is not known). */
export function gatewaysOf(build: Build, gateway: string | undefined): PowerPhase[][] {
  return gateway ? [monitorSupply(build, gateway)] : ofKind(build, ['gateway']);
}

/** The sensor that measures what a piece of equipment draws. */
export function wattsSensor(build: Build, equipment: string): Sensor | undefined {
  return build.system.sensors.find((s) => s.quantity === 'watts' && s.equipment === equipment);
}

/** Place of a piece of equipment among the devices; −1 for none. */
export function deviceIndex(build: Build, key: string | undefined): number {
  return build.system.equipment.findIndex((e) => e.key === key);
}
