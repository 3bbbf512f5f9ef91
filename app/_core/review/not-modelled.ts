import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import { UNCARRIED } from '../faults/catalogue';

/** Hazards of any water that no failure mode stands for. */
const ALWAYS: readonly string[] = [
  'nitrite over weeks',
  'pH and carbon dioxide where nothing is dosed and no gas let in: the worst pH of a day stands for them',
  'how fast the water uses up ozone and chlorine: what builds up is told as a bound',
];

/** Every hazard that the model does not carry, each once, in the order of the catalogue. */
export function allNotModelled(): string[] {
  return named(UNCARRIED.map(({ hazard }) => hazard));
}

/** Hazards that the model does not carry and that can befall a system. */
export function notModelledIn(facility: Facility, system: System): string[] {
  return named(UNCARRIED.filter((mode) => mode.concerns(facility, system)).map(({ hazard }) => hazard));
}

function named(hazards: readonly (string | undefined)[]): string[] {
  return [...new Set([...ALWAYS, ...hazards.filter((hazard) => hazard !== undefined)])];
}
