import type { Fault } from '../fault';

const FED = ['display', 'holding', 'quarantine', 'nursery'];

/** Snail, weed or animal in the overflow of a tank that the return feeds. */
export const fault: Fault = {
  id: 'overflow-blocked',
  row: 'OV1',
  title: 'Overflow blocked',
  effect:
    'The return goes on filling a tank that cannot empty: it spills over its rim, the sump runs low and the pump draws air.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['level'],
  repair: 'overflow',
  states: 'running',
  remedies: ['second-overflow', 'small-sump', 'leak-alarm', 'level-trip'],
  things: (_, system) =>
    system.tanks.some((t) => t.role === 'sump') && system.equipment.some((e) => e.type === 'return-pump')
      ? system.tanks.filter((t) => FED.includes(t.role)).map(({ key, name }) => ({ kind: 'tank', key, name }))
      : [],
  befall: (upset, thing) => upset.blockedOverflows.add(thing.key),
};
