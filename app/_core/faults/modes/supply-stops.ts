import { equipmentThings, type Fault } from '../fault';

/** An intake that is clogged or lost its prime, a solenoid that stays shut. */
export const fault: Fault = {
  id: 'supply-stops',
  row: 'IN1',
  title: 'Supply stops',
  effect: 'New water no longer comes: what lives from it alone loses oxygen first, then the animals’ waste climbs.',
  source: 'a carcass in the intake of a hatchery, 400,000 fish (oregonlive.com, 2015-06)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'equipment',
  states: ['normal'],
  remedies: ['second-supply', 'oxygen-alarm', 'flow-alarm', 'air-in-tank'],
  things: (_, system) => equipmentThings(system, 'supply'),
  befall: (upset, thing) => upset.health.set(thing.key, 'dead'),
};
