import { DEFAULTS } from '../equipment/defaults';
import { MORE, take, taker } from '../equipment/take';
import type { Context, View } from './context';
import type { Subject } from './trial';

/** Seconds of work once somebody stands before it, and until the part is there; Infinity when no means are described. */
export function repairTime(context: Context, view: View, subject: Subject): number {
  return workTime(context, view, subject) + spareTime(context, view, subject);
}

/** Seconds from standing before a piece of equipment to having what its repair needs; 0 where nothing is described. */
export function spareTime(context: Context, view: View, { fault, thing }: Subject): number {
  const found = context.system.equipment.find(({ key }) => key === thing.key);
  if (fault.repair !== 'equipment' || found?.spareMin === undefined) return 0;
  const t = taker(view.resolved.side, view.resolved.only);
  const path = `systems/${context.system.key}/equipment/${found.key}/spareMin`;
  const s = 60 * take(t, path, `time to get a spare for ${found.name}`, found.spareMin, MORE, NOTHING);
  return s;
}

/** A spare that nobody says anything of is taken to be there: what the work takes by default is counted with it. */
const NOTHING = { value: 0, low: 0, high: 0, unit: 'min', source: 'taken to lie on site; common practice, no source' };

/** Seconds of work once somebody stands before it with all it needs; Infinity when no means are described. */
export function workTime(context: Context, view: View, subject: Subject): number {
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
