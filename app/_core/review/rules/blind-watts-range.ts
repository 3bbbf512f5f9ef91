import { example, withEquipment } from './example/example';
import { type BlindSpot, blindSpots } from './facts/watched-power';
import { amount, figure, listed, plain } from './facts/words';
import type { Rule } from './rule';

const WORDS: Record<BlindSpot['what'], string> = {
  idle: 'one that stands still or is dead',
  'dead element': 'one with half of its elements dead',
  'held fast': 'one that is held fast or draws double',
};

const DRAWS: Record<BlindSpot['what'], string> = {
  idle: 'idle, it draws up to',
  'dead element': 'with a dead element, it draws',
  'held fast': 'held fast, it draws',
};

/** A watts range so wide that a broken one falls inside it. */
export const rule: Rule = {
  id: 'blind-watts-range',
  title: 'A watts range would not notice a dead element or a seized pump',
  why: 'The draw of the fault itself counts as healthy, so an alarm on it never calls.',
  source:
    'Idle taken as up to a tenth of the rated power, a dead element as half of a heater’s, held fast as twice: common practice, no source',
  grade: 'low',
  remedy: 'closer-watts-range',
  check: ({ system }) =>
    system.equipment.flatMap((one) => {
      const spots = blindSpots(one);
      const { wattsRange } = one;
      if (wattsRange === undefined || spots.length === 0) return [];
      const consequence = `Its range counts as healthy ${listed(spots.map(({ what }) => WORDS[what]))}.`;
      const figures = [
        { name: 'watts range', value: `${plain(wattsRange.minW)} to ${amount(wattsRange.maxW, 'W')}` },
        ...(one.ratedW?.value == null ? [] : [{ name: 'rated', value: amount(one.ratedW.value, 'W') }]),
        ...spots.map(({ what, watts }) => figure(DRAWS[what], watts, 'W')),
      ];
      return [{ cause: one.name, consequence, figures }];
    }),
  // A pump of variable speed may run at a third of its rating.
  passing: () => example(withEquipment('circulation', { wattsRange: { minW: 5, maxW: 18 } })),
  failing: () => example(withEquipment('return', { wattsRange: { minW: 0, maxW: 46 } })),
};
