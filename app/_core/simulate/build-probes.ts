import type { Build } from './build';
import { sensorSignal } from './build-signals';
import type { LaggingProbe } from './probes';

/** The probes that lag, in the order of the layout. One that is stuck or lost shows what it shows at once; its own number is idle. */
export function buildProbes({ system, plant, places, upset, resolved }: Build): LaggingProbe[] {
  return plant.layout.lagging.flatMap((key, i) => {
    const sensor = system.sensors.find((s) => s.key === key);
    const signal = sensor && sensorSignal(system, sensor, plant, places, upset);
    if (!signal || signal.kind === 'lost' || signal.kind === 'constant') return [];
    return [{ key, at: plant.layout.probes + i, lagS: resolved.lags.get(key) ?? 1, signal }];
  });
}
