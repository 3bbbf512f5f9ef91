import type { Stock } from '../facility/stock';
import type { System, Tank } from '../facility/system';
import type { Check } from './check';
import words from './check-words.json';
import type { Aspect } from './slot';

/** The lines of a body of water itself. */
export function tankChecks(system: System, tank: Tank, sees: readonly Aspect[]): Check[] {
  const about = { noun: 'tank', system: system.key, key: tank.key } as const;
  const line = (end: keyof typeof words.lines, what: string): Check => ({
    kind: 'yes-no',
    key: `${system.key}/tank/${tank.key}/${end}`,
    about,
    what,
    why: words.lines[end],
  });
  const isFed =
    tank.role !== 'sump' && tank.role !== 'reservoir' && (tank.returnShare ?? tank.drainDownMm) !== undefined;
  const lines: Check[] = [];
  if (sees.includes('animals') && system.stock.some((stock) => stock.tank === tank.key))
    lines.push(line('animals', `Animals of ${tank.name} breathe, swim and look as usual; water clear`));
  if (sees.includes('level')) lines.push(line('level', `${tank.name}: level at its line`));
  if (sees.includes('equipment') && isFed) lines.push(line('weir', `${tank.name}: return and weir look as usual`));
  if (sees.includes('equipment') && tank.cover === 'lidded') lines.push(line('lid', `${tank.name}: lid on`));
  return lines;
}

/** The line of animals of one kind: all seen, or how many. */
export function stockCheck(system: System, stock: Stock): Check {
  return {
    kind: 'head-count',
    key: `${system.key}/stock/${stock.key}`,
    about: { noun: 'stock', system: system.key, key: stock.key },
    what: stock.group,
    why: words.lines.count,
    expected: stock.count,
  };
}
