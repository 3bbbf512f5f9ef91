import type { Equipment, System } from '../facility/system';
import type { Begun } from './state-end';

/** Something to look at when a state ends. `key` tells it from the others of its system. */
export type Proof = { key: string } & (
  | /** A piece of equipment that draws what a healthy one does; W, null when no range is known. */
  { kind: 'watts'; equipment: string; range: { minW: number; maxW: number } | null }
  /** One that the state switched on is off again. */
  | { kind: 'off'; equipment: string }
  /** Water is seen to move: by a flow sensor, or by eye where there is none. */
  | { kind: 'flow'; sensor: string | null }
  /** The level is back at its mark: by a level sensor, or by eye. */
  | { kind: 'level'; sensor: string | null }
  /** A waste or drain is shut. */
  | { kind: 'shut'; equipment: string }
  /** What makes ozone is set as before: valve, feed gas and dose. */
  | { kind: 'ozone'; equipment: string }
  /** No oxidant is left in the water: by a sensor, or by a test. */
  | { kind: 'oxidant'; sensor: string | null }
);

/** States in which water leaves the system. */
const DRAWN: ReadonlySet<Begun> = new Set(['water-change', 'backwash']);
/** States after which somebody may have touched what makes ozone, whether a plan says so or not. */
const OZONE_TOUCHED: ReadonlySet<Begun> = new Set(['ozone-work', 'maintenance']);

/**
 * What proves, at the end of a state, that everything runs again: what the plans switch in that state, the flow where a pump
 * is among them, the level and the shut wastes where water was taken out, the dose and what is left of it where ozone stood
 * still. Equipment and sensors are told by name.
 */
export function proofsOf(system: Pick<System, 'equipment' | 'sensors'>, state: Begun): Proof[] {
  const { equipment, sensors } = system;
  const lines = equipment.flatMap((piece) => {
    const line = piece.plan.states.find((one) => one.state === state);
    return line ? [{ piece, then: line.then }] : [];
  });
  const sensorOf = (quantity: 'flow' | 'level' | 'oxidant') =>
    sensors.find((one) => one.quantity === quantity)?.name ?? null;
  const isStill = lines.some(({ piece, then }) => then === 'off' && piece.type === 'return-pump');
  const wastes = equipment.filter(({ type }) => type === 'drain-valve' || (state === 'backwash' && type === 'filter'));
  const ozone = equipment.filter((piece) => isOzoneTouched(piece, state));
  return [
    ...lines.map(({ piece, then }): Proof => switched(piece, then)),
    ...(isStill ? [{ key: 'flow', kind: 'flow', sensor: sensorOf('flow') } as const] : []),
    ...(DRAWN.has(state)
      ? wastes.map(({ key, name }): Proof => ({ key: `shut.${key}`, kind: 'shut', equipment: name }))
      : []),
    ...(DRAWN.has(state) || isStill ? [{ key: 'level', kind: 'level', sensor: sensorOf('level') } as const] : []),
    ...ozone.map(({ key, name }): Proof => ({ key: `ozone.${key}`, kind: 'ozone', equipment: name })),
    ...(ozone.length > 0 ? [{ key: 'oxidant', kind: 'oxidant', sensor: sensorOf('oxidant') } as const] : []),
  ];
}

function switched({ key, name, wattsRange }: Equipment, then: 'on' | 'off'): Proof {
  if (then === 'on') return { key: `off.${key}`, kind: 'off', equipment: name };
  return { key: `watts.${key}`, kind: 'watts', equipment: name, range: wattsRange ?? null };
}

/** Whether a state leaves something that makes ozone otherwise than before: off by its plan, or in somebody's hands. */
export function isOzoneTouched({ type, plan }: Pick<Equipment, 'type' | 'plan'>, state: Begun): boolean {
  if (type !== 'ozone') return false;
  return OZONE_TOUCHED.has(state) || plan.states.some((line) => line.state === state && line.then === 'off');
}
