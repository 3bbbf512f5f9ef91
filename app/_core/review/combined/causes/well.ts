import { fault as probeOut } from '../../../faults/modes/control-probe-out';
import type { Sensor } from '../../../facility/system';
import { type Cause, sharing, together } from './cause';

/** One well: every temperature probe in it hangs in the air once it is pulled out or runs dry. */
export const well: Cause = (look) => {
  const thing = ({ key, name }: Sensor) => ({ kind: 'sensor' as const, key, name });
  const probes = look.system.sensors.filter(({ quantity }) => quantity === 'temperature');
  return sharing(probes, (s) => s.well).flatMap(([name, group]) =>
    together(
      look,
      group.map((sensor) => ({ fault: probeOut, thing: thing(sensor), state: 'normal' as const })),
      `all sit in ${name}`,
    ),
  );
};
