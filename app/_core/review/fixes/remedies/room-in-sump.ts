import { proposed, sumpOf, withTank } from '../edit';
import type { Remedy } from '../remedy';

/** mm by which the sump is run lower. Common practice, no source. */
const LOWER_MM = 50;

/** The sump run lower: more room for what drains down, less water above the return pump. */
export const remedy: Remedy = {
  id: 'room-in-sump',
  changes: 'water',
  places: (_, system) => {
    const sump = sumpOf(system);
    const area = sump?.surfaceM2.value ?? 0;
    const deep =
      sump && (sump.volumeL.value ?? 0) > 3 * LOWER_MM * area && (sump.pumpDryMm?.value ?? 0) > 1.5 * LOWER_MM;
    return sump && deep && sump.rimMm?.value ? [{ key: sump.key, title: `${sump.name} run ${LOWER_MM} mm lower` }] : [];
  },
  apply: (facility, system, { key }) =>
    withTank(facility, system, key, (t) => ({
      ...t,
      volumeL: proposed((t.volumeL.value ?? 0) - LOWER_MM * (t.surfaceM2.value ?? 0)),
      rimMm: proposed((t.rimMm?.value ?? 0) + LOWER_MM),
      pumpDryMm: proposed((t.pumpDryMm?.value ?? 0) - LOWER_MM),
    })),
};
