import type { Facility } from '../facility/facility';
import type { StateName, System } from '../facility/system';
import { FAULTS } from '../faults/catalogue';
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

/** Every fault case of a system: each failure mode of each thing it can befall, in each state that makes a difference. */
export function subjectsOf(facility: Facility, system: System): Subject[] {
  const running = statesOf(system);
  return FAULTS.flatMap((fault) => {
    const states =
      fault.states === 'running'
        ? running
        : fault.states.filter((s) => s === 'normal' || system.states.some((own) => own.name === s));
    return states.flatMap((state) => fault.things(facility, system).map((thing) => ({ fault, thing, state })));
  });
}
