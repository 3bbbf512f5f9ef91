import type { Facility } from '../facility/facility';
import type { StateName, System } from '../facility/system';
import { FAULTS } from '../faults/catalogue';
import { STATE_ALONE } from './reach';
import type { Subject } from './trial';

/** Operating states worth simulating beside the normal one: in use, and asking something of some equipment or taking water out. */
export function statesOf(system: System): StateName[] {
  const different = system.states.filter(
    (state) =>
      (state.drawnL?.value ?? 0) > 0 ||
      system.equipment.some((e) => e.plan.states.some((line) => line.state === state.name)),
  );
  return ['normal', ...different.map((s) => s.name)];
}

/**
 * Every fault case of a system: each failure mode of each thing it can befall, in each state that makes a difference.
 * Those of normal running come first and then what each state does by itself, because the others are measured against them.
 */
export function subjectsOf(facility: Facility, system: System): Subject[] {
  const running = statesOf(system);
  const all = FAULTS.flatMap((fault) => {
    const states = fault.states === 'running' ? running : fault.states.filter((state) => running.includes(state));
    return states.flatMap((state) => fault.things(facility, system).map((thing) => ({ fault, thing, state })));
  });
  const told = new Set(all.map(({ fault, thing, state }) => `${fault.id}:${thing.key}:${state}`));
  // Where another failure mode makes the same of the water, its case stands for both.
  const own = all.filter(({ fault, thing, state }) => !told.has(`${fault.sameAs ?? ''}:${thing.key}:${state}`));
  return own.sort((a, b) => rank(a) - rank(b));
}

function rank({ fault, state }: Subject): number {
  if (state === 'normal') return 0;
  return fault.id === STATE_ALONE ? 1 : 2;
}
