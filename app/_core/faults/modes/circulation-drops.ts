import type { Fault } from '../fault';
import { fault as like } from './circulation-stops';

/** A pump comes off its holder. */
export const fault: Fault = {
  ...like,
  id: 'circulation-drops',
  row: 'CP2',
  sameAs: like.id,
  title: 'Circulation pump drops or turns',
  effect: 'Sand storms, corals are stripped, or it sprays over the rim; for the water at large it has stopped.',
  source: 'common practice, no source',
  remedies: ['second-air', 'watts-alarm', 'oxygen-alarm'],
};
