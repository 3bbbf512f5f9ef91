import type { Sensor } from '../../facility/system';
import { changed, example, withPlan, withSystem } from './example/example';
import { thermostatOf } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Where two probes are one: the same well, or all of them in one tank. */
function sharedPlace(probes: readonly Sensor[]): string | null {
  const [first] = probes;
  if (first === undefined || probes.length < 2) return null;
  if (first.well !== undefined && probes.every(({ well }) => well === first.well)) return `the well ${first.well}`;
  return probes.every(({ tank }) => tank !== undefined && tank === first.tank) ? 'one tank' : null;
}

/** Probes that vote, and share the place that can fool them. */
export const rule: Rule = {
  id: 'probes-in-one-place',
  title: 'Probes that vote share one place',
  why: 'They agree because the same still corner, well or connector fools them all.',
  source: 'Two probes that agree because they share the same bad spot; common practice, no source',
  grade: 'low',
  remedy: 'part-probes',
  check: (context) =>
    context.system.equipment.flatMap((one) => {
      const keys = thermostatOf(one)?.sensors ?? [];
      const probes = context.system.sensors.filter(({ key }) => keys.includes(key));
      const place = sharedPlace(probes);
      if (place === null) return [];
      const consequence = `${listed(probes.map(({ name }) => name))} hang in ${place}.`;
      return [{ cause: one.name, consequence, figures: [{ name: 'probes', value: `${probes.length}` }] }];
    }),
  passing: () => example(withPlan('heater-1', withBoth)),
  failing: () =>
    example(
      withPlan('heater-1', withBoth),
      withSystem(({ sensors }) => ({
        sensors: changed(changed(sensors, 'sump-temperature', { well: 'A' }), 'display-temperature', { well: 'A' }),
      })),
    ),
};

function withBoth({ regulation }: Parameters<Parameters<typeof withPlan>[1]>[0]) {
  if (regulation.kind !== 'thermostat') return {};
  const sensors = ['sump-temperature', 'display-temperature'];
  return { regulation: { ...regulation, sensors, vote: 'highest' as const } };
}
