import { moversOf, otherCircuit, PROPOSED, stocked, withSystem } from '../edit';
import type { Remedy } from '../remedy';

/** Stones that a second blower has in a tank. Common practice, no source. */
const STONES = 2;

/** A second source of air in a tank with animals, on another circuit than what airs and returns its water now. */
export const remedy: Remedy = {
  id: 'second-air',
  changes: 'water',
  places: (facility, system) =>
    stocked(system)
      .filter(({ key }) => {
        const movers = moversOf(system, key);
        return movers.length === 0 || new Set(movers.map(({ circuit }) => circuit)).size === 1;
      })
      .filter(({ key }) => otherCircuit(facility, lifelines(system, key)) !== null)
      .map(({ key, name }) => ({ key, title: `An air blower on another circuit in ${name}` })),
  apply: (facility, system, { key }) => {
    const circuit = otherCircuit(facility, lifelines(system, key))?.key;
    const blower = {
      key: `${PROPOSED}-air-${key}`,
      name: 'Proposed air blower',
      type: 'air-blower' as const,
      tank: key,
      stones: [{ tank: key, count: STONES }],
      ...(circuit ? { circuit } : {}),
      plan: {
        cutOuts: [],
        interlocks: [],
        states: [],
        regulation: { kind: 'always' as const, by: 'hard-wired' as const },
      },
    };
    return withSystem(facility, { ...system, equipment: [...system.equipment, blower] });
  },
};

function lifelines(system: Parameters<typeof stocked>[0], tank: string) {
  return [...moversOf(system, tank), ...system.equipment.filter(({ type }) => type === 'return-pump')];
}
