import { noUpset } from '../../faults/upset';
import type { System } from '../../facility/system';
import { resolveSystem } from '../../equipment/resolve';
import { buildMachine } from '../../simulate/build-machine';
import { run } from '../../simulate/run';
import { HOUR } from '../../time/week';
import { HORIZON } from '../context';
import { reasonNot } from '../reason-not';
import type { DemandDrift } from '../study';
import type { Look } from './look';

/** Local hour at which the largest unit is lost: the night lies ahead. */
const DUSK = 18;
/** Times today's stock up to which is looked. */
const MOST = 64;
/** Part to which the biomass is found. */
const FINE = 0.02;

/**
 * For each tank with animals: the biomass at which the aeration that is left with its largest unit lost no longer carries the
 * night. Found with the model: all animals of the tank made more or fewer alike, until the oxygen just never falls below their
 * limit for its time within the horizon.
 * @returns none where no limit on oxygen is set or no unit gives any, or where even 64 times today's stock is carried
 */
export function demandDrift(look: Look): DemandDrift[] {
  if (reasonNot(look.view)) return [];
  return [...new Set(look.system.stock.map(({ tank }) => tank))].flatMap((tank) => {
    const nowKg = biomassKg(look.system, tank);
    if (nowKg <= 0) return [];
    const units = unitsOf(look, tank);
    if (units.length === 0 || carries(look, tank, null, 1 / MOST) === null) return [];
    const [least] = units
      .map((unit) => ({ unit, times: carriesTimes(look, tank, unit) }))
      .sort((a, b) => a.times - b.times || (a.unit < b.unit ? -1 : 1));
    return least && least.times < MOST ? [{ tank, unit: least.unit, nowKg, carriesKg: nowKg * least.times }] : [];
  });
}

/** kg of animals in a tank. */
function biomassKg({ stock }: System, tank: string): number {
  const own = stock.filter((one) => one.tank === tank);
  return own.reduce((sum, { count, eachG }) => sum + (count * (eachG.value ?? 0)) / 1000, 0);
}

/** Equipment that gives a tank oxygen: by itself, or by moving its water through a sump that is aired. */
function unitsOf({ view }: Look, tank: string): string[] {
  return view.resolved.devices
    .filter(
      ({ equipment, gas, flow }) => gas.some((g) => g.tank === tank) || (equipment.type === 'return-pump' && flow > 0),
    )
    .map(({ equipment }) => equipment.key);
}

/** How many times today's stock is carried without a unit: between 0 and `MOST`. */
function carriesTimes(look: Look, tank: string, unit: string): number {
  if (carries(look, tank, unit, MOST)) return MOST;
  let [good, bad] = [0, MOST];
  // Twofold steps first, then halves: the answer is about as often below today's stock as above.
  for (let times = 1; good === 0 && times > 1 / MOST; times /= 2) {
    if (carries(look, tank, unit, times)) good = times;
    else bad = times;
  }
  if (good === 0) return 0;
  for (let times = good * 2; times < bad; times *= 2) {
    if (!carries(look, tank, unit, times)) bad = times;
    else good = times;
  }
  while (bad / good > 1 + FINE) {
    const middle = Math.sqrt(good * bad);
    if (carries(look, tank, unit, middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/**
 * Whether so many times today's stock gets through the night and the days after it with a unit lost.
 * @returns null where no limit on oxygen is set at all
 */
export function carries(look: Look, tank: string, unit: string | null, times: number): boolean | null {
  const { context, view } = look;
  const { facility, system } = context.simulated;
  const stock = system.stock.map((one) => (one.tank === tank ? { ...one, count: one.count * times } : one));
  const more = { ...system, stock };
  const upset = noUpset();
  if (unit !== null) upset.health.set(unit, 'dead');
  const machine = buildMachine({
    facility,
    system: more,
    resolved: resolveSystem(facility, more, 'nominal'),
    upset,
    credited: context.credit.claimed,
    state: 'normal',
    profileOf: view.profileOf,
    snapshot: view.nominal.at(DUSK),
  });
  if (!machine.limits.some((limit) => limit.what === 'oxygen' && limit.tank === tank)) return null;
  const short = (harms: readonly { what: string; tank: string }[]) =>
    harms.some((harm) => harm.what === 'oxygen' && harm.tank === tank);
  const record = run(machine, {
    untilS: HORIZON,
    clockS: DUSK * HOUR,
    stopAt: null,
    settle: true,
    halt: (world) => short(world.record.harms),
  });
  return !short(record.harms);
}
