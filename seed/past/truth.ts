import type { Sensor } from '#core/facility/system';
import { OXYGEN, SALT, STRIDE, TEMPERATURE, VOLUME } from '#core/simulate/plant';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import type { Course, Doing, Piece } from './course';
import { type Habits, phAt, respirationAfterFeed, wattsOf } from './unmodelled';

/** One moment of a course: which piece of it, and s since that began. */
export interface Moment {
  piece: Piece;
  /** Index of the knot at or before. */
  knot: number;
  tS: number;
  doing: Doing;
  atMs: number;
}

/** What is really there for a sensor to feel at a moment; null where nothing can be told. */
export type Truth = (moment: Moment) => number | null;

/**
 * What a sensor is held in: from the model where it reckons with it, and on top what the model leaves out.
 *
 * @param habits   what the people and the day do to the system beyond the model
 */
export function truthOf({ system, resolved }: Course, sensor: Sensor, habits: Habits): Truth | null {
  const nodeOf = ({ machine }: Piece) => machine.nodes.findIndex(({ key }) => key === sensor.tank);
  const device = system.equipment.findIndex(({ key }) => key === sensor.equipment);
  const state = (offset: number) => (m: Moment) => number(m, STRIDE * nodeOf(m.piece) + offset);
  const oxygen: Truth = (m) =>
    Math.max(0.02, state(OXYGEN)(m) - respirationAfterFeed(habits, m.atMs, state(OXYGEN)(m)) + habits.light(m.atMs));
  const salinity = (m: Moment) =>
    (1000 * state(SALT)(m)) / m.piece.machine.plant.density / Math.max(1e-6, state(VOLUME)(m));
  switch (sensor.quantity) {
    case 'temperature':
      return state(TEMPERATURE);
    case 'oxygen':
      return oxygen;
    case 'salinity':
      return (m) => salinity(m) + habits.salt(m.atMs);
    case 'oxygen-saturation':
      return (m) =>
        (100 * (oxygen(m) ?? 0)) / oxygenSaturation(state(TEMPERATURE)(m), resolved.salinity, resolved.pressureAtm);
    case 'level':
      return (m) => {
        const { plant } = m.piece.machine;
        const k = nodeOf(m.piece);
        return (1000 * (state(VOLUME)(m) - (plant.runVolume[k] ?? 0))) / (plant.surface[k] ?? 1);
      };
    case 'flow':
      return (m) => (m.doing.returnLPerH[nodeOf(m.piece)] ?? 0) * habits.clean(m.atMs);
    case 'leak':
      return (m) => (number(m, m.piece.machine.plant.layout.floor) > 0.0005 ? 1 : 0);
    case 'watts':
      return (m) => wattsOf(resolved.devices[device], m.doing.drawing[device] === true, habits, m.atMs);
    case 'ph':
      return (m) => phAt(habits, m.atMs);
    case 'conductivity':
    case 'redox':
    case 'ammonia':
    case 'nitrite':
    case 'nitrate':
    case 'phosphate':
    case 'alkalinity':
    case 'pressure':
    case 'turbidity':
    case 'carbon-dioxide':
    case 'oxidant':
      return null;
  }
}

function number({ piece, knot, tS }: Moment, index: number): number {
  return piece.run.knots.between(knot, index, tS);
}

/** Goes through the moments of a course in order of time; null before it begins and after it ends. */
export function momentsOf({ pieces }: Course): (atMs: number) => Moment | null {
  let p = 0;
  let knot = 0;
  let doing = 0;
  return (atMs) => {
    while (p < pieces.length - 1 && atMs >= (pieces[p]?.toMs ?? 0)) [p, knot, doing] = [p + 1, 0, 0];
    const piece = pieces[p];
    if (!piece || atMs < piece.fromMs || atMs > piece.toMs) return null;
    const tS = (atMs - piece.fromMs) / 1000;
    while (knot + 1 < piece.run.knots.length && piece.run.knots.time(knot + 1) <= tS) knot += 1;
    while (doing + 1 < piece.doings.length && (piece.doings[doing + 1]?.atS ?? 0) <= tS) doing += 1;
    const does = piece.doings[doing];
    return does ? { piece, knot, tS, doing: does, atMs } : null;
  };
}
