/**
 * What this room knows: how an operating state ends, and what shows afterwards that everything runs again.
 * What it leaves out: what a state does to the water, which `simulate` works out, and who begins and ends one.
 * Where the numbers come from: the watts ranges and plans that people entered.
 */
import type { StateName, System } from '../facility/system';

/** A state somebody or something puts a system into. */
export type Begun = Exclude<StateName, 'normal'>;

/** States with hands in the water: whatever a controller claims, a person ends them, having looked. Common practice, no source. */
const HANDS_IN: ReadonlySet<StateName> = new Set(['water-change', 'backwash', 'treatment']);

/** Whether a state has hands in the water, so that it never ends by itself. */
export function hasHandsIn(state: StateName): boolean {
  return HANDS_IN.has(state);
}

/** Whether a device ends the state of a system: described so, and without hands in the water. */
export function endsItself({ states }: Pick<System, 'states'>, state: Begun): boolean {
  const described = states.find(({ name }) => name === state);
  return described !== undefined && described.endsBy !== 'person' && !hasHandsIn(state);
}

/** Something to look at when a state ends. */
export type Proof =
  /** A piece of equipment that draws what a healthy one does; W, null when no range is known. */
  | { kind: 'watts'; equipment: string; range: { minW: number; maxW: number } | null }
  /** One that the state switched on is off again. */
  | { kind: 'off'; equipment: string }
  /** Water is seen to move: by a flow sensor, or by eye where there is none. */
  | { kind: 'flow'; sensor: string | null }
  /** The level is back at its mark: by a level sensor, or by eye. */
  | { kind: 'level'; sensor: string | null }
  /** A waste or drain is shut. */
  | { kind: 'shut'; equipment: string };

/**
 * What proves, at the end of a state, that everything runs again: what the plans switch in that state, the flow where a pump
 * is among them, the level and the shut wastes where water was taken out. Equipment and sensors are told by name.
 */
export function proofsOf(system: Pick<System, 'equipment' | 'sensors'>, state: Begun): Proof[] {
  const { equipment, sensors } = system;
  const lines = equipment.flatMap((piece) => {
    const line = piece.plan.states.find((one) => one.state === state);
    return line ? [{ piece, then: line.then }] : [];
  });
  const sensorOf = (quantity: 'flow' | 'level') => sensors.find((one) => one.quantity === quantity)?.name ?? null;
  const isStill = lines.some(({ piece, then }) => then === 'off' && piece.type === 'return-pump');
  const isDrawn = state === 'water-change' || state === 'backwash';
  const wastes = equipment.filter(({ type }) => type === 'drain-valve' || (state === 'backwash' && type === 'filter'));
  return [
    ...lines.map(({ piece, then }): Proof => {
      if (then === 'on') return { kind: 'off', equipment: piece.name };
      return { kind: 'watts', equipment: piece.name, range: piece.wattsRange ?? null };
    }),
    ...(isStill ? [{ kind: 'flow', sensor: sensorOf('flow') } as const] : []),
    ...(isDrawn ? wastes.map(({ name }): Proof => ({ kind: 'shut', equipment: name })) : []),
    ...(isDrawn || isStill ? [{ kind: 'level', sensor: sensorOf('level') } as const] : []),
  ];
}
