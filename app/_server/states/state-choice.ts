import 'server-only';
import { stateMinOf } from '#core/equipment/defaults';
import type { System } from '#core/facility/system';
import { mayStopAir } from '#core/states/stops-air';
import { type Proof, proofsOf } from '#core/states/proofs';
import { type Begun, endsItself, hasHandsIn } from '#core/states/state-end';
import { newId } from '#data/new-id';

/** A state that can be begun. */
export interface StateChoice {
  state: Begun;
  /** Whether the system's description and plans speak of it. */
  isDescribed: boolean;
  /** min */
  lastsMin: number;
  endsItself: boolean;
  hasHandsIn: boolean;
  proofs: Proof[];
  /** Id for beginning it. */
  entry: string;
  /** Whether it stops something that brings oxygen in, so that the oxygen without it is looked at first. */
  stopsAir: boolean;
}

/** A state of a system as it can be begun. */
export function choiceOf(system: System, state: Begun): StateChoice {
  const described = system.states.find(({ name }) => name === state);
  return {
    state,
    isDescribed: described !== undefined,
    lastsMin: described?.lastsMin?.value ?? stateMinOf(state).value,
    endsItself: endsItself(system, state),
    hasHandsIn: hasHandsIn(state),
    proofs: proofsOf(system, state),
    entry: newId(),
    stopsAir: mayStopAir(system, state),
  };
}
