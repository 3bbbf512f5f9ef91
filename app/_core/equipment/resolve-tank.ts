import type { System, Tank } from '../facility/system';
import { CALM } from '../water/evaporation-transfer';
import { evaporationTransfer } from '../water/evaporation-transfer';
import { stillSurfaceTransfer } from '../water/still-surface-transfer';
import { surfaceConvection } from '../water/surface-convection';
import { AIR_SIDE, layerResistance, WATER_SIDE, wallTransmittance } from '../water/wall-transmittance';
import materials from '../water/materials.json';
import { DEFAULTS, scaled } from './defaults';
import type { ResolvedTank } from './resolved';
import { EITHER, type Fallback, LESS, LOSS, MORE, take, type Taker } from './take';

/** Part of free-surface heat loss that is left under a lid. Common practice, no source. */
export const LID = 0.4;

/** Roles that take part in the return's flow. */
const FED = new Set<Tank['role']>(['display', 'holding', 'quarantine', 'nursery']);

/** One tank in numbers; `share` is still unscaled. */
export function resolveTank(t: Taker, system: System, tank: Tank): ResolvedTank {
  const at = (field: string) => `systems/${system.key}/tanks/${tank.key}/${field}`;
  const called = (what: string) => `${what} of ${tank.name}`;
  // Less water suffers more; but a reservoir is what can run into it.
  const bad = tank.role === 'reservoir' ? MORE : LESS;
  const volume = take(t, at('volumeL'), called('water volume'), tank.volumeL, bad) / 1000;
  const surface = take(t, at('surfaceM2'), called('open surface'), tank.surfaceM2, EITHER);
  const mm = (
    field: 'drainDownMm' | 'outletMm' | 'rimMm' | 'pumpDryMm',
    what: string,
    bad: typeof LESS,
    fallback: Fallback,
  ) => take(t, at(field), called(what), tank[field], bad, fallback) / 1000;
  const sump = tank.role === 'sump';
  const drainDown = sump ? 0 : mm('drainDownMm', 'drain-down', MORE, DEFAULTS.drainDownMm);
  const hole = tank.siphonBreakMm;
  return {
    tank,
    volume,
    surface,
    loss: lossOf(t, system, tank, volume, surface) + surfaceConvection(surface) * (tank.cover === 'lidded' ? LID : 1),
    evaporation: evaporationOf(t, system, tank, surface),
    stillGas: stillSurfaceTransfer(20) * surface,
    drainDown,
    siphonBreak: hole
      ? take(t, at('siphonBreakMm'), called('siphon break'), hole, MORE, DEFAULTS.drainDownMm) / 1000
      : Number.POSITIVE_INFINITY,
    outlet: sump ? 0 : Math.max(drainDown, mm('outletMm', 'depth of the return outlet', MORE, DEFAULTS.outletMm)),
    rim: mm('rimMm', 'freeboard', LESS, sump ? DEFAULTS.sumpRimMm : DEFAULTS.rimMm),
    stand:
      tank.drainAboveMm === undefined
        ? Number.POSITIVE_INFINITY
        : take(t, at('drainAboveMm'), called('height of the standpipe'), tank.drainAboveMm, EITHER) / 1000,
    share: FED.has(tank.role)
      ? tank.returnShare
        ? take(t, at('returnShare'), called('share of the return'), tank.returnShare, EITHER)
        : volume
      : 0,
    pumpDry: sump ? mm('pumpDryMm', 'water above the return pump', LESS, DEFAULTS.pumpDryMm) : 0,
  };
}

function lossOf(t: Taker, system: System, tank: Tank, volume: number, surface: number): number {
  const path = `systems/${system.key}/tanks/${tank.key}/lossWPerK`;
  const name = `heat loss of ${tank.name}`;
  if (tank.wall) {
    const base = `systems/${system.key}/tanks/${tank.key}/wall`;
    const area = take(t, `${base}/areaM2`, `wall area of ${tank.name}`, tank.wall.areaM2, LOSS);
    const thickness =
      take(t, `${base}/thicknessMm`, `wall thickness of ${tank.name}`, tank.wall.thicknessMm, {
        warm: 'high',
        cold: 'low',
      }) / 1000;
    const resistance = layerResistance(thickness, materials[tank.wall.material].conductivity);
    return take(
      t,
      path,
      name,
      tank.lossWPerK,
      LOSS,
      exactly(wallTransmittance(WATER_SIDE, resistance, AIR_SIDE) * area),
    );
  }
  // Nothing said about the walls: 10 mm glass on a floor twice as long as wide.
  const side = Math.sqrt(2 * surface);
  const area = surface + 3 * side * (volume / surface);
  const glass = wallTransmittance(WATER_SIDE, layerResistance(0.01, materials.glass.conductivity), AIR_SIDE) * area;
  return take(t, path, name, tank.lossWPerK, LOSS, scaled(DEFAULTS.lossShare, glass, 'W/K'));
}

function exactly(value: number): Fallback {
  return { value, low: value, high: value, unit: 'W/K', source: 'the wall law' };
}

function evaporationOf(t: Taker, system: System, tank: Tank, surface: number): number {
  const base =
    tank.cover === 'lidded'
      ? DEFAULTS.activityLidded
      : tank.role === 'sump'
        ? DEFAULTS.activitySump
        : DEFAULTS.activityOpen;
  const activity = take(
    t,
    `systems/${system.key}/tanks/${tank.key}/evaporationActivity`,
    `evaporation of ${tank.name} (calm water is ${CALM})`,
    tank.evaporationActivity,
    LOSS,
    base,
  );
  return evaporationTransfer(surface, DEFAULTS.airSpeedMPerS.value, activity);
}
