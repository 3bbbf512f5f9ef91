import type { ResolvedSystem, ResolvedTank } from '../equipment/resolved';
import { gasTransferFactor } from '../water/gas-transfer';
import { oxygenSaturation } from '../water/oxygen-saturation';
import { respirationFactor } from '../water/respiration';

/** Gas exchange and use of oxygen of some tanks, as the model has them. */
export interface GasInUse {
  /** m³ */
  volume: number;
  /** L/h brought to saturation at 20 °C, all equipment but one that stood. */
  transferLPerH: number;
  /** mg/h used by animals and bacteria at 20 °C. */
  useMgPerH: number;
}

const L_PER_H = 3.6e6;
const MG_PER_H = 3.6e6;

/**
 * @param tanks     those that mix
 * @param stopped   key of equipment that stands; null where all of it runs
 */
export function gasInUse(resolved: ResolvedSystem, tanks: readonly ResolvedTank[], stopped: string | null): GasInUse {
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  const running = resolved.devices.filter(
    ({ equipment }) => equipment.key !== stopped && runs(equipment.plan.regulation),
  );
  const byDevices = running.flatMap(({ gas }) => gas).filter(({ tank }) => keys.has(tank));
  const hasSump = tanks.some(({ tank }) => tank.role === 'sump');
  const falling = running.filter(({ equipment }) => equipment.type === 'return-pump');
  const fall = hasSump ? resolved.fallShare * falling.reduce((sum, { flow }) => sum + flow, 0) : 0;
  const still = tanks.reduce((sum, { stillGas }) => sum + stillGas, 0);
  const animals = tanks.reduce((sum, { tank }) => sum + (resolved.respiration.get(tank.key) ?? 0), 0);
  const bacteriaHere = hasSump || !resolved.tanks.some(({ tank }) => tank.role === 'sump');
  return {
    volume: tanks.reduce((sum, { volume }) => sum + volume, 0),
    transferLPerH: L_PER_H * (byDevices.reduce((sum, { flow }) => sum + flow, 0) + fall + still),
    useMgPerH: MG_PER_H * animals * (1 + (bacteriaHere ? resolved.bacteriaShare : 0)),
  };
}

function runs({ kind }: { kind: string }): boolean {
  return kind === 'always' || kind === 'hours';
}

/** What a temperature makes of them. */
export function factorsAt({ salinity, pressureAtm }: ResolvedSystem, temperature: number) {
  return {
    transfer: gasTransferFactor(temperature),
    use: respirationFactor(temperature),
    saturation: oxygenSaturation(temperature, salinity, pressureAtm),
  };
}
