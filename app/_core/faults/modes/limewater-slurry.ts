import type { Fault } from '../fault';
import { fault as like } from './doser-on';

/** Limewater that did not settle. */
export const fault: Fault = {
  ...like,
  id: 'limewater-slurry',
  row: 'KW1',
  sameAs: like.id,
  title: 'Limewater passes slurry',
  effect: 'pH to 9 or 10 and a snow of carbonate, in the same minutes as a pump stuck on.',
  source: 'pH 9.7 after 57 L of limewater (packedhead.net/p237)',
  remedies: ['dose-limit', 'ph-stop', 'ph-alarm'],
};
