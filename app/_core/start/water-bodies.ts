import type { Figure } from '../facility/figure';
import type { Stock } from '../facility/stock';
import type { Tank } from '../facility/system';
import { keyFrom } from '../forms/draft';
import type { StartAnswers } from './answers';
import { entered, oneOf } from './parts';

const ROLE_NAMES: Record<StartAnswers['tanks']['role'], string> = {
  display: 'Display',
  holding: 'Holding tank',
  quarantine: 'Quarantine tank',
  nursery: 'Nursery tank',
};

/** The tanks with animals in them, and the sump if there is one. */
export function tanksOf({ tanks: { role, count, volumeL, depthMm, cover }, sump }: StartAnswers): {
  keeping: Tank[];
  sump: Tank | null;
} {
  const keeping = Array.from(
    { length: count },
    (_, at): Tank => ({
      ...oneOf(role, ROLE_NAMES[role], at, count),
      role,
      volumeL: entered(volumeL),
      surfaceM2: surfaceOf(volumeL, depthMm),
      cover,
    }),
  );
  if (!sump) return { keeping, sump: null };
  const below: Tank = {
    key: 'sump',
    name: 'Sump',
    role: 'sump',
    volumeL: entered(sump.volumeL),
    surfaceM2: surfaceOf(sump.volumeL, sump.depthMm),
    cover: 'open',
  };
  return { keeping, sump: below };
}

/** m²; litres over millimetres of straight-walled water are square metres. */
function surfaceOf(volumeL: number, depthMm: number): Figure {
  return entered(Number((volumeL / depthMm).toPrecision(4)), 'its water divided by its depth, both entered');
}

/** Depth of a reservoir nobody was asked about, mm. */
const RESERVOIR_DEPTH = { value: 300, low: 200, high: 600 };

/** The reservoir of a top-off; only its content was asked for. */
export function reservoirOf(holdsL: number): Tank {
  const { value, low, high } = RESERVOIR_DEPTH;
  const surface = (depthMm: number) => Number((holdsL / depthMm).toPrecision(3));
  const source = `as though ${value} mm deep, ${low} to ${high}; common practice, no source`;
  return {
    key: 'reservoir',
    name: 'Reservoir',
    role: 'reservoir',
    volumeL: entered(holdsL),
    surfaceM2: { value: surface(value), origin: 'default', low: surface(high), high: surface(low), source },
    cover: 'lidded',
  };
}

/** The animals, spread over the tanks as evenly as whole animals can be. */
export function stockOf({ animals }: StartAnswers, tanks: readonly Tank[]): Stock[] {
  const taken = new Set<string>();
  return animals.flatMap(({ group, count, eachG }) => {
    const base = freeKey(keyFrom(group) || 'animals', taken);
    return tanks.flatMap((tank, at) => {
      const here = Math.floor(count / tanks.length) + Number(at < count % tanks.length);
      if (here === 0) return [];
      const key = tanks.length === 1 ? base : freeKey(`${base}-${at + 1}`, taken);
      return [{ key, group, tank: tank.key, count: here, eachG: entered(eachG) }];
    });
  });
}

/**
 * A key that is not taken: the one that was meant, or the same with a number.
 *
 * @param taken   keys that are taken; the one that is given out is added
 */
export function freeKey(meant: string, taken: Set<string>): string {
  let key = meant;
  for (let more = 2; taken.has(key); more++) key = `${meant.slice(0, 58)}-${more}`;
  taken.add(key);
  return key;
}
