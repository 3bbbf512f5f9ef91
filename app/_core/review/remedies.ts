import type { Equipment } from '../facility/system';
import type { Context } from './context';
import type { FaultCase } from './result';
import table from './remedies.json';

/** Id of a remedy. */
export type RemedyId = keyof typeof table;

/** What to do, in words. */
export function remedyText(id: RemedyId): string {
  return table[id];
}

/** Whether a text is the id of a remedy. */
export function isRemedy(id: string): id is RemedyId {
  return id in table;
}

type Already = (context: Context, equipment: Equipment | undefined) => boolean;

/** For remedies that may be there already: whether they are. Those not listed are always worth proposing. */
const ALREADY: Partial<Record<RemedyId, Already>> = {
  'cut-out': (c, e) =>
    e?.plan.cutOuts.some(
      (line) => line.quantity === 'temperature' && line.above !== undefined && c.credit.claimed(line.safeguard),
    ) ?? false,
  'low-cut-out': (_, e) =>
    e?.plan.cutOuts.some((line) => line.quantity === 'temperature' && line.below !== undefined) ?? false,
  'second-heater': (c) => count(c, 'heater') > 1,
  'split-heaters': (c) => count(c, 'heater') > 1,
  'second-chiller': (c) => count(c, 'chiller') > 1,
  'second-return': (c) => count(c, 'return-pump') > 1,
  'watts-alarm': (c, e) => e !== undefined && alarmed(c, (on) => on.kind === 'watts' && on.equipment === e.key),
  'watts-range': (_, e) => e?.wattsRange !== undefined,
  'flow-alarm': (c) => sensorAlarm(c, 'flow'),
  'oxygen-alarm': (c) => sensorAlarm(c, 'oxygen'),
  'level-alarm': (c) => sensorAlarm(c, 'level'),
  'leak-alarm': (c) => sensorAlarm(c, 'leak'),
  'high-alarm': (c) => sensorAlarm(c, 'temperature', 'above'),
  'low-alarm': (c) => sensorAlarm(c, 'temperature', 'below'),
  'outside-watch': (c) => c.facility.site.watchdog !== undefined,
  generator: (c) => c.facility.site.generator !== undefined,
  'power-cut-means': (c) => c.facility.site.powerCut !== undefined,
  'run-limit': (_, e) => e?.plan.regulation.kind === 'level' && e.plan.regulation.runLimitMin !== undefined,
  'lost-sensing': (c, e) =>
    (e ? [e] : c.system.equipment).every(
      (x) => x.plan.regulation.kind !== 'thermostat' || x.plan.lostSensing?.action === 'off',
    ),
  'pause-timer': (c) => c.system.states.some((s) => s.name === 'feeding' && s.endSafeguard !== undefined),
};

function count(context: Context, type: Equipment['type']): number {
  return context.system.equipment.filter((e) => e.type === type).length;
}

function alarmed(context: Context, is: (on: Context['system']['alarms'][number]['on']) => boolean): boolean {
  return context.system.alarms.some((alarm) => alarm.answeredBy !== 'nobody' && is(alarm.on));
}

function sensorAlarm(context: Context, quantity: string, side?: 'above' | 'below'): boolean {
  const sensors = new Set(context.system.sensors.filter((s) => s.quantity === quantity).map((s) => s.key));
  return alarmed(
    context,
    (on) => on.kind === 'sensor' && sensors.has(on.sensor) && (side === undefined || on[side] !== undefined),
  );
}

/** The most direct remedy of a case that is not in place already; the last one when all are. */
export function remedyFor(context: Context, c: FaultCase): RemedyId {
  const equipment = context.system.equipment.find((e) => e.key === c.thing.key);
  const ids = c.remedies.filter(isRemedy);
  return ids.find((id) => !ALREADY[id]?.(context, equipment)) ?? ids[ids.length - 1] ?? 'second-air';
}
