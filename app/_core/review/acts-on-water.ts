import type { System } from '../facility/system';
import type { Upset } from '../faults/upset';

/** Whether an upset touches a system's water by something other than what stops, lies or stands open. */
export function actsOnWater(system: System, upset: Upset): boolean {
  const { equipment, tanks } = system;
  return (
    upset.newWater !== null ||
    upset.mainsOxidantPasses !== null ||
    upset.roomShiftC !== 0 ||
    upset.feedDumpedG > 0 ||
    upset.clockOffS !== 0 ||
    equipment.some(
      ({ key }) =>
        upset.weakened.has(key) || upset.siphoning.has(key) || upset.brings.has(key) || upset.setPointShift.has(key),
    ) ||
    tanks.some(
      ({ key }) =>
        upset.leaks.has(key) ||
        upset.hoses.has(key) ||
        upset.emptyReservoirs.has(key) ||
        upset.reservoirSalinity.has(key),
    )
  );
}
