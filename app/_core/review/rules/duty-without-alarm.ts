import type { EquipmentType } from '../../facility/system';
import { example, withMore } from './example/example';
import { SECOND_RETURN } from './example/dosed';
import { ofType } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule, RuleContext } from './rule';

/** Types of which several share a duty. */
const TYPES: readonly EquipmentType[] = ['return-pump', 'circulation-pump', 'air-blower', 'heater', 'chiller'];

/** One of several that share a duty has no alarm while another has: often a stand-by that became needed. */
export const rule: Rule = {
  id: 'duty-without-alarm',
  title: 'A unit in daily duty has no alarm, though its fellow has',
  why: 'A stand-by that became needed, as stock grew, was never put on the list: its loss is seen by nobody.',
  source: 'The duty pump that was a stand-by and never got an alarm; common practice, no source',
  grade: 'medium',
  remedy: 'alarm-for-duty',
  check: (context) => {
    const alarmed = powerAlarmed(context);
    return TYPES.flatMap((type) => {
      const duty = ofType(context, type).filter(({ plan }) => plan.regulation.kind !== 'never');
      const watched = duty.filter(({ key }) => alarmed.has(key));
      if (watched.length === 0) return [];
      return duty
        .filter((one) => !watched.includes(one))
        .map(({ name }) => ({
          cause: name,
          consequence: `No alarm watches its power, as one does that of ${listed(watched.map((one) => one.name))}.`,
          figures: [{ name: 'with an alarm', value: `${watched.length} of ${duty.length}` }],
        }));
    });
  },
  passing: () => example(),
  failing: () => example(withMore(SECOND_RETURN)),
};

function powerAlarmed({ system }: RuleContext): Set<string | undefined> {
  const meters = new Map(system.sensors.filter((s) => s.quantity === 'watts').map((s) => [s.key, s.equipment]));
  return new Set(
    system.alarms.map(({ on }) =>
      on.kind === 'watts' ? on.equipment : on.kind === 'sensor' ? meters.get(on.sensor) : undefined,
    ),
  );
}
