import { type Fault, roomThings } from '../fault';

/** K by which an unheated room cools in winter. Common practice, no source. */
const COLD_K = 12;

/** The heating of the building fails. */
export const fault: Fault = {
  id: 'room-cold',
  row: 'HX3',
  title: 'Room too cold',
  effect: 'The water follows the room down as far as the heaters cannot hold it.',
  source: 'common practice, no source',
  threatens: 'cold',
  shows: ['temperature'],
  repair: 'room',
  states: ['normal'],
  remedies: ['second-heater', 'room-alarm', 'low-alarm'],
  things: roomThings,
  befall: (upset) => {
    upset.roomShiftC = -COLD_K;
  },
};
