import type { AlarmSource } from '../alarms/definition';
import type { Backing } from '../facility/site';
import type { Equipment, SensorQuantity } from '../facility/system';
import type { Context } from './context';
import type { RemedyId } from './remedies';
import type { CaseThing } from './result';

/** Equipment that a fault case is about: the thing itself, what a probe regulates, what hangs on a circuit; else all. */
export function concerned({ facility, system }: Context, thing: CaseThing): Equipment[] {
  const { equipment } = system;
  switch (thing.kind) {
    case 'equipment':
      return equipment.filter((e) => e.key === thing.key);
    case 'sensor':
      return equipment.filter(({ plan: { regulation } }) =>
        regulation.kind === 'thermostat'
          ? regulation.sensors.includes(thing.key)
          : regulation.kind === 'level' && regulation.sensor === thing.key,
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
  'salinity-round': (c) => c.view('nominal').walks.some((walk) => walk.sees.has('salinity')),
  'outside-watch': ({ facility: { site } }) => site.watchdog !== undefined && site.watchdog.answeredBy !== 'nobody',
  'gateway-power': (c) => c.facility.monitors.every((m) => isBacked(c, m.circuit)),
  generator: (c) => c.facility.site.generator !== undefined,
  'generator-test': (c) => c.credit.tested(c.facility.site.generator?.safeguard),
  'power-cut-means': (c) => c.facility.site.powerCut !== undefined,
  'pause-timer': (c) => c.system.states.some((s) => s.name === 'feeding' && s.endSafeguard !== undefined),
};

function count({ system }: Context, type: Equipment['type']): number {
  return system.equipment.filter((e) => e.type === type).length;
}

/** Whether all equipment of a type among some is so; a remedy for what is not there is none. */
function all(es: Equipment[], type: Equipment['type'], is: (e: Equipment) => boolean): boolean {
  return es.filter((e) => e.type === type).every(is);
}

function cutsOut(
  { credit }: Context,
  e: Equipment,
  quantity: 'temperature' | 'level',
  side: 'above' | 'below',
): boolean {
  return e.plan.cutOuts.some((c) => c.quantity === quantity && c[side] !== undefined && credit.claimed(c.safeguard));
}

/** Whether a device switches it off when a level passes a bound on a side. */
function locks({ system, credit }: Context, e: Equipment, side: 'above' | 'below'): boolean {
  return e.plan.interlocks.some(({ when, then, by, safeguard }) => {
    if (when.kind !== 'sensor' || then !== 'off' || by === 'person' || when[side] === undefined) return false;
    return credit.claimed(safeguard) && system.sensors.some((s) => s.key === when.sensor && s.quantity === 'level');
  });
}

/** Whether something holds for what moves or airs the water of each tank with animals. */
function everyTank({ system }: Context, is: (movers: Equipment[]) => boolean): boolean {
  const moves = (e: Equipment, tank: string) =>
    e.type === 'air-blower'
      ? (e.stones ?? [{ tank: e.tank }]).some((s) => s.tank === tank)
      : (e.type === 'circulation-pump' || e.type === 'skimmer') && e.tank === tank;
  return [...new Set(system.stock.map((s) => s.tank))].every((tank) =>
    is(system.equipment.filter((e) => moves(e, tank))),
  );
}

function onReturn({ system }: Context, e: Equipment): boolean {
  return system.equipment.some((pump) => pump.type === 'return-pump' && pump.circuit === e.circuit);
}

function isBacked({ facility }: Context, circuit: string | undefined): boolean {
  const supplied = (by: Backing) => by === 'ups' || facility.site.generator !== undefined;
  return facility.circuits.some((c) => c.key === circuit && c.backedBy.some(supplied));
}

/** Whether an alarm that somebody answers watches the power of some equipment. */
export function watched(context: Context, { key }: Equipment): boolean {
  const meters = context.system.sensors.filter((s) => s.quantity === 'watts' && s.equipment === key).map((s) => s.key);
  return alarmed(context, (on) =>
    on.kind === 'watts' ? on.equipment === key : on.kind === 'sensor' && meters.includes(on.sensor),
  );
}

/** Whether an alarm that somebody answers watches a quantity, on a side. */
function alarmOn(context: Context, quantity: SensorQuantity, side?: 'above' | 'below'): boolean {
  const sensors = new Set(context.system.sensors.filter((s) => s.quantity === quantity).map((s) => s.key));
  return alarmed(
    context,
    (on) => on.kind === 'sensor' && sensors.has(on.sensor) && (side === undefined || on[side] !== undefined),
  );
}

function alarmed({ system, credit }: Context, is: (on: AlarmSource) => boolean): boolean {
  return system.alarms.some((a) => a.answeredBy !== 'nobody' && credit.claimed(a.safeguard) && is(a.on));
}
