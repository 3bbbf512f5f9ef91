import type { ResolvedDevice, ResolvedSystem, ResolvedTank } from '#core/equipment/resolved';
import type { Random } from './random';

/**
 * A system as it might really be, which is not quite as it is described: walls lose more or less, pumps are worn, stones
 * clogged, animals have grown. Without this the readings would only tell the model what the model said.
 * How far each figure strays is common practice, no source.
 */
export function perturbed(resolved: ResolvedSystem, random: Random): ResolvedSystem {
  const appetite = random.between(0.85, 1.15);
  return {
    ...resolved,
    tanks: resolved.tanks.map((tank) => strayTank(tank, random)),
    devices: resolved.devices.map((device) => strayDevice(device, random)),
    respiration: new Map([...resolved.respiration].map(([tank, use]) => [tank, use * appetite])),
    bacteriaShare: resolved.bacteriaShare * random.between(0.8, 1.2),
    fallShare: resolved.fallShare * random.between(0.85, 1.1),
  };
}

function strayTank(tank: ResolvedTank, random: Random): ResolvedTank {
  return {
    ...tank,
    loss: tank.loss * random.between(0.8, 1.3),
    evaporation: tank.evaporation * random.between(0.75, 1.25),
    stillGas: tank.stillGas * random.between(0.85, 1.15),
  };
}

function strayDevice(device: ResolvedDevice, random: Random): ResolvedDevice {
  const clogged = random.between(0.88, 1);
  return {
    ...device,
    watts: device.watts * random.between(0.95, 1.02),
    heatShare: device.heatShare * random.between(0.92, 1),
    flow: device.equipment.type === 'top-off' ? device.flow : device.flow * random.between(0.86, 0.98),
    coolingW: device.coolingW * random.between(0.9, 1.02),
    gas: device.gas.map(({ tank, flow }) => ({ tank, flow: flow * clogged })),
  };
}
