import { circuitsOf, type Fault } from '../fault';

/** A residual-current device trips; one that guards a single circuit is that circuit's own case. */
export const fault: Fault = {
  id: 'rcd-trips',
  row: 'PW4',
  title: 'RCD group trips',
  effect: 'Every circuit behind it goes dead and does not come back by itself, often because one device leaks.',
  source: 'one tripped in an outage and everything on it was lost (tonmo.com, thread 335)',
  threatens: 'either',
  shows: ['equipment'],
  repair: 'circuit',
  states: 'running',
  remedies: ['split-rcd', 'circuit-alarm', 'second-air'],
  things: (facility, system) => {
    const groups = new Set(circuitsOf(facility, system).map((c) => c.rcd));
    return [...groups]
      .filter((rcd): rcd is string => rcd !== undefined && facility.circuits.filter((c) => c.rcd === rcd).length > 1)
      .map((rcd) => ({ kind: 'rcd', key: rcd, name: rcd }));
  },
  befall: (upset, thing, facility) => {
    for (const circuit of facility.circuits) if (circuit.rcd === thing.key) upset.deadCircuits.add(circuit.key);
  },
};
