import { type Fault, thingsWhere } from '../fault';
import { fault as like } from './heater-on';

/** W from which a heater is taken for one that a boiler or a heating loop feeds. Common practice, no source. */
const LOOP_W = 5000;

/** The valve of a heating loop stays open. */
export const fault: Fault = {
  ...like,
  id: 'heat-valve-open',
  row: 'HX1',
  sameAs: like.id,
  title: 'Valve of the heating loop stuck open',
  effect: 'As a heater welded on, with ten to a hundred times the power: hours shrink to one or two.',
  source: 'a touch pool of 60,600 L gained 5.6 K between two rounds (oceansentry.org, 16 stingrays)',
  remedies: ['cut-out', 'spring-return-valve', 'high-alarm'],
  things: (_, system) => thingsWhere(system, (e) => e.type === 'heater' && (e.ratedW?.value ?? 0) >= LOOP_W),
};
