import { type Fault, tankThings } from '../fault';

/** m³/s: 757 L in ten hours (boingboing.net, 2009-02-27). */
const VALVE_M3_PER_S = 0.757 / 36_000;

/** An octopus at a valve. */
export const fault: Fault = {
  id: 'animal-opens-valve',
  row: 'LK3',
  title: 'Animal opens a valve',
  effect: 'Water runs to the floor for as long as nobody comes.',
  source: 'about 757 L in ten hours (boingboing.net, 2009-02-27)',
  threatens: 'either',
  shows: ['floor'],
  repair: 'plumbing',
  states: ['normal'],
  remedies: ['tool-fixings', 'leak-alarm', 'level-alarm'],
  things: (_, system) => {
    const handy = new Set(system.stock.filter(({ group }) => /octopus/i.test(group)).map((s) => s.tank));
    return tankThings(system, (t) => handy.has(t.key));
  },
  befall: (upset, thing, _, system) => {
    const tank = system.tanks.find((t) => t.key === thing.key);
    const depth = (tank?.volumeL.value ?? 0) / 1000 / (tank?.surfaceM2.value ?? 1);
    upset.leaks.set(thing.key, { flow: VALVE_M3_PER_S, depth });
  },
};
