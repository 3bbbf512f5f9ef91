import type { Tank } from '../facility/system';
import type { Harm } from './result';

/** A harm with the name of its tank, for telling it to people. */
export function namedHarm(tanks: readonly Pick<Tank, 'key' | 'name'>[], harm: Harm): Harm {
  const tank = tanks.find(({ key }) => key === harm.tank);
  return tank ? { ...harm, tankName: tank.name } : harm;
}
