import { has, type Uncarried } from '../fault';

/** A closed filter that stood unpowered. */
export const fault: Uncarried = {
  id: 'filter-goes-foul',
  row: 'FL4',
  title: 'Filter goes foul while it stands',
  effect: 'Without oxygen its bacteria die, and sulphide comes as a slug on restart.',
  source: 'water that stood still ran back into the tanks of a farm, about 400 t dead (fishfarmingexpert.com, 1159506)',
  carried: false,
  why: 'How long it takes is disputed: half an hour to a day and more, told by keepers.',
  hazard: 'what filters let go: sand, a slug of bad water',
  asks: { paper: 'stagnant-water' },
  concerns: (_, system) => has(system, 'filter'),
};
