import type { Fault } from '../fault';
import { fault as like } from './doser-on';

/** Missed doses are given at once. */
export const fault: Fault = {
  ...like,
  id: 'doses-caught-up',
  row: 'DP5',
  sameAs: like.id,
  title: 'Missed doses caught up at once',
  effect: 'Days of doses in one: as a dosing pump that is stuck on.',
  source: 'common practice, no source',
  remedies: ['dose-limit', 'ph-stop', 'ph-alarm'],
};
