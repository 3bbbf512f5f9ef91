import type { Equipment } from '../facility/system';
import type { Interlock } from '../plans/plan';
import type { Context } from './context';
import {
  alarmOn,
  all,
  count,
  cutsOut,
  everyTank,
  isBacked,
  locks,
  onReturn,
  readOnRounds,
  reservoirAlarm,
  spread,
  stopsOn,
  watched,
} from './in-place-facts';
import type { RemedyId } from './remedies';
import type { CaseThing } from './result';
import { stopsWithoutFlow } from './rules/facts/equipment';

/** Equipment that a fault case is about: the thing itself, what a probe regulates, what hangs on a circuit; else all. */
export function concerned({ facility, system }: Context, thing: CaseThing): Equipment[] {
  const { equipment } = system;
  switch (thing.kind) {
    case 'equipment':
      return equipment.filter((e) => e.key === thing.key);
    case 'sensor':
      return equipment.filter(({ plan: { regulation, interlocks } }) =>
        regulation.kind === 'thermostat'
          ? regulation.sensors.includes(thing.key)
          : (regulation.kind === 'level' && regulation.sensor === thing.key) || heeds(interlocks, thing.key),
      );
    case 'circuit':
      return equipment.filter((e) => e.circuit === thing.key);
    case 'rcd': {
      const behind = facility.circuits.filter((c) => c.rcd === thing.key).map((c) => c.key);
      return equipment.filter((e) => e.circuit !== undefined && behind.includes(e.circuit));
    }
    case 'tank':
    case 'site':
    case 'state':
    case 'gateway':
    case 'system':
    case 'room':
    case 'matter':
      return equipment;
  }
}

function heeds(interlocks: readonly Interlock[], sensor: string): boolean {
  return interlocks.some(({ when }) => when.kind === 'sensor' && when.sensor === sensor);
}

type InPlace = (context: Context, concerned: Equipment[]) => boolean;

/** For remedies that may be there already: whether they are. Those not listed are always worth proposing. */
export const IN_PLACE: Partial<Record<RemedyId, InPlace>> = {
  'cut-out': (c, es) => all(es, 'heater', (e) => cutsOut(c, e, 'temperature', 'above')),
  'low-cut-out': (c, es) => all(es, 'chiller', (e) => cutsOut(c, e, 'temperature', 'below')),
  'level-trip': (c) =>
    all(c.system.equipment, 'return-pump', (e) => cutsOut(c, e, 'level', 'below') || locks(c, e, 'below')),
  'high-level-lock': (c) =>
    all(c.system.equipment, 'top-off', (e) => cutsOut(c, e, 'level', 'above') || locks(c, e, 'above')),
  'skimmer-interlock': (c, es) => all(es, 'skimmer', (e) => locks(c, e, 'above')),
  'second-heater': (c) => count(c, 'heater') > 1,
  'split-heaters': (c) => count(c, 'heater') > 1,
  'second-chiller': (c) => count(c, 'chiller') > 1,
  'second-return': (c) => count(c, 'return-pump') > 1,
  'second-air': (c) => everyTank(c, (movers) => new Set(movers.map((e) => e.circuit)).size > 1),
  'air-in-tank': (c) => everyTank(c, (movers) => movers.some((e) => !onReturn(c, e))),
  'backed-air': (c) => everyTank(c, (movers) => movers.some((e) => isBacked(c, e.circuit))),
  'second-probe': (_, es) => es.every(({ plan: { regulation: r } }) => r.kind !== 'thermostat' || r.sensors.length > 1),
  'lost-sensing': (_, es) =>
    es.every(({ plan }) => plan.regulation.kind !== 'thermostat' || plan.lostSensing?.action === 'off'),
  'run-limit': (_, es) =>
    all(es, 'top-off', ({ plan: { regulation: r } }) => r.kind === 'level' && r.runLimitMin !== undefined),
  'watts-alarm': (c, es) => es.every((e) => watched(c, e)),
  'circuit-alarm': (c, es) => es.some((e) => watched(c, e) || (e.type === 'return-pump' && alarmOn(c, 'flow'))),
  'watts-range': (_, es) => es.every((e) => e.wattsRange !== undefined),
  'flow-alarm': (c) => alarmOn(c, 'flow'),
  'oxygen-alarm': (c) => alarmOn(c, 'oxygen'),
  'level-alarm': (c) => alarmOn(c, 'level'),
  'leak-alarm': (c) => alarmOn(c, 'leak'),
  'high-alarm': (c) => alarmOn(c, 'temperature', 'above'),
  'low-alarm': (c) => alarmOn(c, 'temperature', 'below'),
  'salinity-round': (c) => readOnRounds(c, 'salinity'),
  'outside-watch': ({ facility: { site } }) => site.watchdog !== undefined && site.watchdog.answeredBy !== 'nobody',
  'gateway-power': (c) => c.facility.monitors.every((m) => isBacked(c, m.circuit)),
  generator: (c) => c.facility.site.generator !== undefined,
  'generator-test': (c) => c.credit.tested(c.facility.site.generator?.safeguard),
  'power-cut-means': (c) => c.facility.site.powerCut !== undefined,
  'battery-test': (c) =>
    c.facility.circuits.every((one) => !one.backedBy.includes('ups') || c.credit.tested(one.upsSafeguard)),
  'flow-interlock': (c, es) => es.every((e) => stopsWithoutFlow(c, e)),
  'pressure-alarm': (c) => alarmOn(c, 'pressure'),
  'salinity-alarm': (c) => alarmOn(c, 'salinity'),
  'ph-alarm': (c) => alarmOn(c, 'ph'),
  'oxidant-alarm': (c) => alarmOn(c, 'oxidant', 'above') || alarmOn(c, 'redox', 'above'),
  'reservoir-alarm': reservoirAlarm,
  'lamp-check': (c) => readOnRounds(c, 'equipment'),
  'oxygen-round': (c) => readOnRounds(c, 'oxygen'),
  'ph-stop': (c, es) => es.every((e) => stopsOn(c, e, 'ph') > 0),
  'second-ph-probe': (c, es) => es.every((e) => stopsOn(c, e, 'ph') > 1),
  'ozone-two-probes': (c, es) => es.every((e) => stopsOn(c, e, 'redox') + stopsOn(c, e, 'oxidant') > 1),
  'day-tank': (_, es) => es.every(({ source }) => source !== 'mains'),
  'small-hopper': ({ system }, es) =>
    es.every(({ hopperG }) => (hopperG?.value ?? 0) <= 1.5 * (system.feedGPerDay?.value ?? 0)),
  'second-filter': (c) => count(c, 'filter') > 1,
  'second-supply': (c) => count(c, 'supply') > 1,
  'second-dechlorinator': (c) => spread(c, 'dechlorinator'),
  'siphon-break': ({ system }) =>
    system.tanks.every((tank) => (tank.returnShare?.value ?? 0) === 0 || tank.siphonBreakMm !== undefined),
  calibrate: ({ system, on }) => system.sensors.every((s) => s.calibrationDue === undefined || s.calibrationDue >= on),
  'state-timer': ({ system }) =>
    system.states.every((one) => one.name === 'feeding' || one.name === 'night' || one.endSafeguard !== undefined),
  'pause-timer': (c) => c.system.states.some((s) => s.name === 'feeding' && s.endSafeguard !== undefined),
};
