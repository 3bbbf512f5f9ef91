import type { System } from '../facility/system';
import { keyFrom } from '../forms/draft';
import type { StartAnswers } from './answers';
import { heatParts } from './heat';
import { movementParts, topOffParts } from './movement';
import { entered, type Ground, type Parts } from './parts';
import { freeKey, stockOf, tanksOf } from './water-bodies';
import { watchParts } from './watch';

/**
 * The system that the answers describe, in the facility's form: what was answered, plans in their plainest form, and no
 * more. A protection nobody was asked about is not claimed, a figure nobody gave is left to its default.
 *
 * @param taken   keys of the systems the site has already
 */
export function startSystem(answers: StartAnswers, taken: Iterable<string>): System {
  const { what } = answers;
  const { keeping, sump } = tanksOf(answers);
  const [first] = keeping;
  if (!first) throw new Error('A system has at least one tank');
  const ground: Ground = { answers, tanks: keeping, plant: sump ?? first };
  const heat = heatParts(ground);
  const topOff = topOffParts(ground);
  const regulating = answers.heat?.by === 'controller' ? heat.sensors?.[0] : undefined;
  const parts = [heat, movementParts(ground), topOff, watchParts(ground, regulating)];
  const all = <K extends keyof Parts>(list: K) =>
    parts.flatMap((part): NonNullable<Parts[K]>[number][] => [...(part[list] ?? [])]);
  return {
    key: freeKey(keyFrom(what.name) || 'system', new Set(taken)),
    name: what.name,
    kind: what.kind,
    room: what.room,
    salinity: entered(what.salinity),
    tanks: [...keeping, ...(sump ? [sump] : []), ...all('tanks')],
    equipment: all('equipment'),
    // A probe that both regulates and calls stands once, as the later of the two has it.
    sensors: [...new Map(all('sensors').map((sensor) => [sensor.key, sensor])).values()],
    stock: stockOf(answers, keeping),
    safeguards: all('safeguards'),
    alarms: all('alarms'),
    states: [],
  };
}
