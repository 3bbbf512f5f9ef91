import { command, phaseAt } from './device';
import { raiseAlarms } from './raise';
import { harm, flip } from './react';
import { regulate } from './regulate';
import { type RegimeWatches, returnLost, setMode, stagnant } from './mode';
import type { Watch } from './watch';
import { look, pastRows } from './watch-table';
import type { World } from './world';

/** Rounds of the fixed point before a plan counts as contradicting itself. */
const ROUNDS = 100;

/**
 * Bring every discrete part of the world to rest at this instant: supply, comparisons, regulation, layers of authority,
 * then flows and regimes, then alarms.
 * @throws if the plans never come to rest (two lines that undo each other at one instant)
 */
export function settle(world: World, regimes: RegimeWatches): void {
  const { machine, record } = world;
  let acted = new Set<string>();
  for (let round = 0; ; round++) {
    if (round > ROUNDS) throw new Error('a plan contradicts itself: its lines keep undoing each other at one instant');
    let changed = supply(world);
    changed = compare(world) || changed;
    changed = regulate(world) || changed;
    const lost = returnLost(machine.devices);
    acted = new Set();
    for (const device of machine.devices) changed = command(device, lost, acted) || changed;
    changed = runDry(world) || changed;
    setMode(machine, regimes);
    if (!changed) break;
  }
  // Only what holds once all has come to rest has really made a difference.
  for (const key of acted) record.acted.add(key);
  for (const [k, { siphonSafeguard }] of machine.nodes.entries())
    if (siphonSafeguard && machine.mode.siphoning[k] === 1) record.acted.add(siphonSafeguard);
  for (const k of stagnant(machine)) {
    record.optimistic = true;
    record.still.add(machine.nodes[k]?.key ?? '');
  }
  if (machine.mode.oxidant.some((rate) => rate > 0)) record.bound = true;
  raiseAlarms(world);
}

function supply(world: World): boolean {
  let changed = false;
  for (const device of world.machine.devices) {
    const phase = phaseAt(device.phases, world.t);
    for (const key of phase.thanks) world.record.acted.add(key);
    if (!phase.live) device.wasDark = true;
    const live = phase.live && !(device.noRestart && device.wasDark);
    if (live !== device.powered) {
      device.powered = live;
      changed = true;
    }
  }
  return changed;
}

function compare(world: World): boolean {
  const { table } = world;
  look(table, world.x, world.stepper.air);
  const rows = pastRows(table);
  for (const row of rows) flip(world, table.watches[row] as Watch);
  return rows.length > 0;
}

/** A return pump that draws air loses its prime and does not find it again by itself. */
function runDry(world: World): boolean {
  const { machine } = world;
  if (!machine.dry?.active) return false;
  let changed = false;
  for (const device of machine.devices) {
    if (device.type !== 'return-pump' || device.dry || !device.drawing) continue;
    device.dry = true;
    changed = true;
    const tank = machine.nodes[machine.plant.hub]?.key ?? '';
    harm(
      world,
      { class: 'equipment', what: 'pump-dry', direction: 'below', tank, limit: 0, forS: 0, groups: [] },
      world.t,
    );
    world.record.events.push({ t: world.t, what: `${device.key}: draws air and stops pumping` });
  }
  return changed;
}
