import { type Fault, tankThings } from '../fault';

/** m³/s through a garden hose (900 L/h). Common practice, no source. */
const HOSE_M3_PER_S = 900 / 3.6e6;

/** Nobody stayed with the hose. */
export const fault: Fault = {
  id: 'hose-left-running',
  row: 'PE11',
  title: 'Hose left running',
  effect:
    'Untreated mains water runs in for hours: salinity and temperature change, its disinfectant stays in, and at last it goes over the rim.',
  source:
    'named first among the causes of sudden loss by pond trade pages; koi in a pond of 94,600 L (austinponddoctor.com)',
  threatens: 'either',
  shows: ['level'],
  repair: 'state',
  states: ['water-change'],
  remedies: ['hose-timer', 'chlorine-test', 'oxidant-alarm', 'leak-alarm'],
  things: (facility, system) =>
    facility.site.mains && system.states.some((s) => s.name === 'water-change' && (s.drawnL?.value ?? 0) > 0)
      ? tankThings(system, (t) => t.role === (system.tanks.some((o) => o.role === 'sump') ? 'sump' : 'display'))
      : [],
  befall: (upset, thing) => upset.hoses.set(thing.key, HOSE_M3_PER_S),
};
