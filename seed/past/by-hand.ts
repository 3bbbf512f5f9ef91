import type { Snapshot } from '#core/simulate/build';
import type { Machine } from '#core/simulate/machine';
import { STRIDE, VOLUME } from '#core/simulate/plant';
import { addMatched } from '#core/simulate/pour-back';

/** Days after which somebody carries a bucket to a system that has no top-off. Common practice, no source. */
export const REFILLED_EVERY = 3;

/** What evaporated is replaced with fresh water, in a system whose plan does not do so itself. */
export function topUpByHand({ x }: Snapshot, machine?: Machine): void {
  if (!machine || machine.devices.some(({ makeUp }) => makeUp)) return;
  const k = lowest(machine);
  x[STRIDE * k + VOLUME] = (x[STRIDE * k + VOLUME] ?? 0) + missing(x, machine);
}

/** What was drawn is put back, like the water that is there. */
export function fillUp(x: Float64Array, machine?: Machine): void {
  if (machine) addMatched(x, lowest(machine), missing(x, machine));
}

/** Every reservoir is full again, as daily work keeps it. */
export function refillReservoirs(x: Float64Array, machine?: Machine): void {
  if (!machine) return;
  const from = machine.plant.layout.reservoirs;
  for (let r = 0; r < machine.plant.reservoirs; r++) x[from + r] = machine.initial[from + r] ?? 0;
}

/** The sump, or the only tank: where a bucket is emptied. */
function lowest({ plant }: Machine): number {
  return Math.max(plant.hub, 0);
}

/** m³ that all nodes together lack of their running levels; what has drained from one into another lacks nowhere. */
function missing(x: Float64Array, { plant }: Machine): number {
  let volume = 0;
  for (let k = 0; k < plant.nodes; k++) volume += (plant.runVolume[k] ?? 0) - (x[STRIDE * k + VOLUME] ?? 0);
  return volume;
}
