import type { Equipment, System } from '../facility/system';
import type { Check } from './check';
import words from './check-words.json';
import type { Aspect } from './slot';

/** The lines of a piece of equipment: that it is as usual, and for a top-off with a reservoir what was used. */
export function equipmentChecks(system: System, equipment: Equipment, sees: readonly Aspect[]): Check[] {
  const about = { noun: 'equipment', system: system.key, key: equipment.key, type: equipment.type } as const;
  const key = `${system.key}/equipment/${equipment.key}`;
  const { look, why } = words.equipment[equipment.type];
  const lines: Check[] = [];
  if (sees.includes('equipment'))
    lines.push({ kind: 'yes-no', key: `${key}/usual`, about, what: `${equipment.name}: ${look}`, why });
  const source = system.tanks.find((tank) => tank.key === equipment.source);
  if (source && sees.includes('level'))
    lines.push({
      kind: 'used',
      key: `${key}/used`,
      about,
      what: `Used from ${source.name} since the last round`,
      why: words.lines.used,
    });
  return lines;
}
