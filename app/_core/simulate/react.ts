import type { Harm } from '../review/result';
import type { LimitWatch } from './machine';
import type { Watch } from './watch';
import { renew, retire } from './watch-table';
import type { World } from './world';

/** Flip a watch and do what follows from it at once. */
export function flip(world: World, w: Watch): void {
  w.active = !w.active;
  renew(world.table, w);
  switch (w.role) {
    case 'limit':
      limitFlipped(world, w);
      return;
    case 'floor':
      floorWet(world, w);
      return;
    case 'sign':
      if (w.active) signSeen(world, w);
      return;
    case 'cut-out':
      world.record.events.push({
        t: world.t,
        what: `${deviceKey(world, w)}: cut-out ${w.active ? 'opens' : 'closes'}`,
      });
      return;
    case 'empty':
      world.record.events.push({ t: world.t, what: 'reservoir empty' });
      return;
    case 'bare':
      if (w.active)
        world.record.events.push({ t: world.t, what: `${world.machine.nodes[w.owner]?.key ?? ''}: no water left` });
      return;
    case 'regulation':
    case 'interlock':
    case 'alarm':
    case 'overflow':
    case 'siphon':
    case 'rim':
    case 'standpipe':
    case 'flood':
    case 'dry':
      return;
  }
}

function deviceKey(world: World, w: Watch): string {
  return world.machine.devices[w.owner]?.key ?? '';
}

/** Of each aspect only the first sign counts, wherever it shows. */
function signSeen({ machine, record, table, t }: World, w: Watch): void {
  const aspect = machine.signs[w.owner]?.aspect ?? '';
  if (record.signs.has(aspect)) return;
  record.signs.set(aspect, t);
  for (const sign of machine.signs) if (sign.aspect === aspect) retire(table, sign.watch);
}

/** Water on the floor is harm at once and stays; it is no exposure that could end. */
function floorWet(world: World, w: Watch): void {
  const limit = world.machine.limits[w.owner];
  if (limit) harm(world, limit, world.t);
}

function limitFlipped(world: World, w: Watch): void {
  const index = w.owner;
  const limit = world.machine.limits[index];
  if (!limit) return;
  if (!w.active) {
    endExposure(world, index);
    return;
  }
  beginExposure(world, index, limit, world.t);
}

/** Begin to count the time beyond a limit from `sinceS`. */
export function beginExposure(world: World, index: number, limit: LimitWatch, sinceS: number): void {
  const exposure = { limit: index, sinceS };
  world.exposures.push(exposure);
  if (limit.forS <= world.t - sinceS) {
    harm(world, limit, world.t);
    return;
  }
  world.timers.push({
    atS: sinceS + limit.forS,
    live: () => world.exposures.includes(exposure),
    fire: () => harm(world, limit, world.t),
    turning: false,
  });
}

function endExposure(world: World, index: number): void {
  const at = world.exposures.findIndex((e) => e.limit === index);
  if (at < 0) return;
  const [exposure] = world.exposures.splice(at, 1);
  if (exposure) world.record.exposures.push({ limit: index, fromS: exposure.sinceS, toS: world.t });
}

/** Write a harm down, once for each limit. */
export function harm(world: World, limit: Omit<LimitWatch, 'watch' | 'node'>, atS: number): void {
  const known = world.record.harms.some(
    (h) => h.what === limit.what && h.direction === limit.direction && h.tank === limit.tank && h.limit === limit.limit,
  );
  if (known) return;
  world.record.harms.push(harmOf(limit, atS));
}

/** The harm that a limit stands for, s from the beginning of a run. */
export function harmOf(limit: Omit<LimitWatch, 'watch' | 'node'>, atS: number): Harm {
  return {
    class: limit.class,
    what: limit.what,
    direction: limit.direction,
    tank: limit.tank,
    limit: limit.limit,
    forMin: limit.forS / 60,
    groups: limit.groups,
    atS,
  };
}
