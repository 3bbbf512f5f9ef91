import { example, withoutAlarms } from './example/example';
import { alarmsOn } from './facts/alarms';
import { figure } from './facts/words';
import type { Rule } from './rule';

/**
 * The sump can run low without anybody being called. Demanded wherever there is a sump, because all losses of water
 * show there: a tank without one keeps its level, and what it loses shows on the floor.
 */
export const rule: Rule = {
  id: 'no-level-alarm',
  title: 'No alarm calls when the sump runs low',
  why: 'A leak, an open drain, a blocked overflow and a dead top-off all empty the sump first; then the pump draws air.',
  source: 'Low float in the sump; common practice, no source',
  grade: 'medium',
  remedy: 'level-alarm',
  check: (context) => {
    const sump = context.system.tanks.find(({ role }) => role === 'sump');
    if (sump === undefined) return [];
    const set = alarmsOn(context, 'level').filter(
      ({ sensor, below }) => sensor.tank === sump.key && below !== undefined,
    );
    if (set.length > 0) return [];
    const dry = sump.pumpDryMm?.value ?? null;
    return [
      {
        cause: sump.name,
        consequence: 'It can run low until the return pump draws air, and nobody is called.',
        figures:
          dry === null ? [] : [figure('from the running level down to where the return pump draws air', dry, 'mm')],
      },
    ];
  },
  passing: () => example(),
  failing: () => example(withoutAlarms('sump-low')),
};
