import { has, type Uncarried } from '../fault';

/** A lamp over still water. */
export const fault: Uncarried = {
  id: 'uv-without-flow',
  row: 'UV1',
  title: 'UV on without flow',
  effect: 'The water in its vessel boils and comes as a hot slug; fire.',
  source: 'common practice, no source',
  carried: false,
  why: 'The vessel is no water of its own in a description.',
  asks: { rule: 'dosing-without-flow' },
  concerns: (_, system) => has(system, 'uv'),
};
