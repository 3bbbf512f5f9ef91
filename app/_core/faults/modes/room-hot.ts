import { type Fault, roomThings } from '../fault';

/** K by which a heat wave or failed air conditioning warms a room. Common practice, no source. */
const HOT_K = 10;

/** A heat wave, or the cooling of the room fails. */
export const fault: Fault = {
  id: 'room-hot',
  row: 'CH1',
  title: 'Room too hot',
  effect: 'The water follows the room up; chillers work against warmer air and may trip.',
  source: 'a small aquarium in a heat wave (practicalfishkeeping.co.uk, brewery)',
  threatens: 'warm',
  shows: ['temperature'],
  repair: 'room',
  states: ['normal'],
  remedies: ['second-chiller', 'room-alarm', 'high-alarm'],
  things: roomThings,
  befall: (upset) => {
    upset.roomShiftC = HOT_K;
  },
};
