import type { AlarmSource } from '../alarms/definition';
import type { Backing } from '../facility/site';
import type { Equipment, SensorQuantity } from '../facility/system';
import type { Aspect } from '../rounds/slot';
import type { Context } from './context';

/** How many of a type there are. */
export function count({ system }: Context, type: Equipment['type']): number {
  return system.equipment.filter((e) => e.type === type).length;
}

/** Whether all equipment of a type among some is so; a remedy for what is not there is none. */
export function all(es: Equipment[], type: Equipment['type'], is: (e: Equipment) => boolean): boolean {
  return es.filter((e) => e.type === type).every(is);
}

/** Whether a cut-out that is claimed opens on a quantity past a bound on a side. */
export function cutsOut(
  { credit }: Context,
  e: Equipment,
  quantity: 'temperature' | 'level',
  side: 'above' | 'below',
): boolean {
  return e.plan.cutOuts.some((c) => c.quantity === quantity && c[side] !== undefined && credit.claimed(c.safeguard));
}

/** Whether a device switches it off when a level passes a bound on a side. */
export function locks({ system, credit }: Context, e: Equipment, side: 'above' | 'below'): boolean {
  return e.plan.interlocks.some(({ when, then, by, safeguard }) => {
    if (when.kind !== 'sensor' || then !== 'off' || by === 'person' || when[side] === undefined) return false;
    return credit.claimed(safeguard) && system.sensors.some((s) => s.key === when.sensor && s.quantity === 'level');
  });
}

/** Whether something holds for what moves or airs the water of each tank with animals. */
export function everyTank({ system }: Context, is: (movers: Equipment[]) => boolean): boolean {
  const moves = (e: Equipment, tank: string) =>
    e.type === 'air-blower'
      ? (e.stones ?? [{ tank: e.tank }]).some((s) => s.tank === tank)
      : (e.type === 'circulation-pump' || e.type === 'skimmer') && e.tank === tank;
  return [...new Set(system.stock.map((s) => s.tank))].every((tank) =>
    is(system.equipment.filter((e) => moves(e, tank))),
  );
}

/** Whether it hangs on the circuit of a return pump. */
export function onReturn({ system }: Context, e: Equipment): boolean {
  return system.equipment.some((pump) => pump.type === 'return-pump' && pump.circuit === e.circuit);
}

/** Whether a battery or a generator that is there carries a circuit. */
export function isBacked({ facility }: Context, circuit: string | undefined): boolean {
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
export function alarmOn(context: Context, quantity: SensorQuantity, side?: 'above' | 'below'): boolean {
  const sensors = new Set(context.system.sensors.filter((s) => s.quantity === quantity).map((s) => s.key));
  return alarmed(
    context,
    (on) => on.kind === 'sensor' && sensors.has(on.sensor) && (side === undefined || on[side] !== undefined),
  );
}

function alarmed({ system, credit }: Context, is: (on: AlarmSource) => boolean): boolean {
  return system.alarms.some((a) => a.answeredBy !== 'nobody' && credit.claimed(a.safeguard) && is(a.on));
}

/** Whether an alarm that somebody answers watches the level of a reservoir. */
export function reservoirAlarm(context: Context): boolean {
  const { tanks, sensors } = context.system;
  const reservoirs = new Set(tanks.filter((t) => t.role === 'reservoir').map((t) => t.key));
  const inOne = new Set(
    sensors.filter((s) => s.quantity === 'level' && s.tank && reservoirs.has(s.tank)).map((s) => s.key),
  );
  return alarmed(context, (on) => on.kind === 'sensor' && inOne.has(on.sensor));
}

/** Whether some round looks at an aspect. */
export function readOnRounds(context: Context, aspect: Aspect): boolean {
  return context.view('nominal').walks.some((walk) => walk.sees.has(aspect));
}

/** How many sensors of a quantity a device heeds that switches it off. */
export function stopsOn({ system, credit }: Context, { plan }: Equipment, quantity: SensorQuantity): number {
  const heeded = plan.interlocks.flatMap(({ when, then, by, safeguard }) =>
    when.kind === 'sensor' && then === 'off' && by !== 'person' && credit.claimed(safeguard) ? [when.sensor] : [],
  );
  return system.sensors.filter((s) => s.quantity === quantity && heeded.includes(s.key)).length;
}

/** Whether there are several of a type, not all on one circuit. */
export function spread({ system }: Context, type: Equipment['type']): boolean {
  const circuits = system.equipment.filter((e) => e.type === type).map((e) => e.circuit);
  return circuits.length > 1 && new Set(circuits).size > 1;
}
