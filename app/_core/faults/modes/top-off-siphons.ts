import { type Fault, thingsWhere } from '../fault';

/** The outlet lies below the reservoir’s level. */
export const fault: Fault = {
  id: 'top-off-siphons',
  row: 'AT3',
  title: 'Top-off siphons on after it stopped',
  effect: 'The whole reservoir runs in without power: salinity falls, the sump rises.',
  source: 'common practice, no source',
  threatens: 'either',
  shows: ['level'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['vacuum-break', 'small-reservoir', 'high-level-lock', 'leak-alarm'],
  things: (_, system) =>
    thingsWhere(system, (e) => e.type === 'top-off' && e.source !== undefined && e.source !== 'mains'),
  befall: (upset, thing) => upset.siphoning.add(thing.key),
};
