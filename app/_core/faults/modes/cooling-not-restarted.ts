import { equipmentThings, type Fault } from '../fault';

/** s that the power is away. Common practice, no source. */
const DIP_S = 60;

/** After a dip of the power some things start again and some do not. */
export const fault: Fault = {
  id: 'cooling-not-restarted',
  row: 'PW8',
  title: 'Power dips and the cooling does not come back',
  effect: 'Pumps and heat run again, the chiller waits in stand-by: the water climbs.',
  source: 'a boiler that started again and a heat pump that did not, 16 rays of 33 (chicagotribune.com, 2008-07-18)',
  threatens: 'warm',
  shows: ['equipment'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['prove-restart', 'restore-list', 'high-alarm'],
  things: (_, system) => equipmentThings(system, 'chiller'),
  befall: (upset, thing) => {
    upset.utilityDown = true;
    upset.utilityBackS = DIP_S;
    upset.noRestart.add(thing.key);
  },
};
