import { DEFAULTS } from '../equipment/defaults';
import { MORE, take, taker } from '../equipment/take';
import type { Context, View } from './context';
import type { Subject } from './trial';

/** Seconds of work once somebody stands before it; Infinity when no means are described. */
export function repairTime(context: Context, view: View, subject: Subject): number {
  const { fault, thing } = subject;
  const { powerCut } = context.facility.site;
  const t = taker(view.resolved.side, view.resolved.only);
  switch (fault.repair) {
    case 'equipment':
      return view.resolved.devices.find((d) => d.equipment.key === thing.key)?.repairS ?? Number.POSITIVE_INFINITY;
    case 'utility':
      return powerCut
        ? 60 * take(t, 'site/powerCut/repairMin', powerCut.means, powerCut.repairMin, MORE)
        : Number.POSITIVE_INFINITY;
    case 'monitor':
      return 60 * take(t, 'repair/monitor', 'work to put right', undefined, MORE, DEFAULTS.repairMin.other);
    case 'circuit':
    case 'overflow':
    case 'plumbing':
    case 'water':
    case 'room':
    case 'sensor':
    case 'state':
      return (
        60 * take(t, `repair/${fault.repair}`, 'work to put right', undefined, MORE, DEFAULTS.repairMin[fault.repair])
      );
  }
}
