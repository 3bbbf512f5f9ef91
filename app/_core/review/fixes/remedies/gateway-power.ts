import { proposed, PROPOSED } from '../edit';
import type { Remedy } from '../remedy';

/** min that a battery carries gateway, router and host. Common practice, no source. */
const BATTERY_MIN = 480;

/** Gateway, router and host on a battery, apart from what they report. */
export const remedy: Remedy = {
  id: 'gateway-power',
  changes: 'water',
  places: ({ monitors, circuits, site }) => {
    const isBacked = (key: string | undefined) => circuits.some((c) => c.key === key && c.backedBy.length > 0);
    return monitors.some(({ circuit }) => !isBacked(circuit))
      ? [{ key: site.key, title: 'Gateway, router and host on a battery of their own' }]
      : [];
  },
  apply: (facility) => {
    const key = `${PROPOSED}-watch`;
    const fresh = { key, name: 'Battery of the watch', backedBy: ['ups' as const], upsMin: proposed(BATTERY_MIN) };
    const monitors = facility.monitors.map((m) => ({ ...m, circuit: key }));
    return { ...facility, monitors, circuits: [...facility.circuits, fresh] };
  },
};
