import { has, type Uncarried } from '../fault';

/** W from which a heater is taken for one that a boiler or a heating loop feeds. Common practice, no source. */
const LOOP_W = 5000;

/** A perforated exchanger. */
export const fault: Uncarried = {
  id: 'exchanger-leaks',
  row: 'HX2',
  title: 'Heat exchanger perforated',
  effect: 'Glycol, inhibitor or boiler water gets into the tank, or salt into the loop.',
  source: 'common practice, no source',
  carried: false,
  why: 'What the loop holds and how it poisons is not described.',
  hazard: 'what a heating or cooling loop holds, leaking into the water',
  asks: { paper: 'heat-loop' },
  concerns: (_, system) =>
    has(system, 'chiller') || system.equipment.some((e) => e.type === 'heater' && (e.ratedW?.value ?? 0) >= LOOP_W),
};
