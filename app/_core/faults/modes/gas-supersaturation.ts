import { has, type Uncarried } from '../fault';

/** Air drawn in on the suction side. */
export const fault: Uncarried = {
  id: 'gas-supersaturation',
  row: 'RP4',
  title: 'Pump draws air on its suction side',
  effect:
    'Fine bubbles dissolve under pressure: gas-bubble disease within hours, and the water reads normal by morning.',
  source: 'common practice, no source',
  carried: false,
  why: 'Total gas pressure is no state of the model.',
  hazard: 'gas supersaturation',
  asks: { paper: 'gas-pressure' },
  concerns: (_, system) => has(system, 'return-pump', 'filter'),
};
