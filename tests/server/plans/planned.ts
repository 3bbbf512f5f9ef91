import type { Plan } from '#core/plans/plan';

/** The plan of the small system's heater, with another band. */
export const planned = (lowC: number, highC = 25.5): Plan => ({
  cutOuts: [],
  interlocks: [],
  states: [],
  regulation: { kind: 'thermostat', sensors: ['display-temperature'], vote: 'single', lowC, highC, by: 'controller' },
});
