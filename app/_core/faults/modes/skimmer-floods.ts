import { DEFAULTS } from '../../equipment/defaults';
import { equipmentThings, type Fault } from '../fault';

/** mm by which the sump stands above the level at which the skimmer floods. Common practice, no source. */
const ABOVE_MM = 20;

/** The sump stands too high: a knocked level switch keeps it there, or somebody overfilled it. */
export const fault: Fault = {
  id: 'skimmer-floods',
  row: 'SK1',
  title: 'Skimmer overflows because the sump rose',
  effect:
    'Foam turns to water and goes to the cup and the floor; where the top-off holds the high level, fresh water replaces salt.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: ['level'],
  repair: 'equipment',
  states: 'running',
  remedies: ['skimmer-interlock', 'cup-float', 'leak-alarm', 'high-level-lock'],
  things: (_, system) => {
    const sump = system.tanks.find((t) => t.role === 'sump');
    return equipmentThings(system, 'skimmer').filter(
      (thing) => system.equipment.find((e) => e.key === thing.key)?.tank === sump?.key,
    );
  },
  befall: (upset, thing, _, system) => {
    const skimmer = system.equipment.find((e) => e.key === thing.key);
    const floods = skimmer?.floodsAboveMm?.value ?? DEFAULTS.floodsAboveMm.value;
    const regulating = new Set(
      system.equipment.flatMap(({ plan }) => (plan.regulation.kind === 'level' ? [plan.regulation.sensor] : [])),
    );
    const switches = system.sensors.filter(({ key, tank }) => regulating.has(key) && tank === skimmer?.tank);
    if (switches.length === 0) upset.sumpRaised = (floods + ABOVE_MM) / 1000;
    // They read lower than the truth, so the level they hold is higher.
    for (const { key } of switches) upset.probes.set(key, { as: 'shifted', by: -(floods + ABOVE_MM) });
  },
};
