import { example, withEquipment } from './example/example';
import { WATCHED } from './facts/watched-power';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** Equipment of which nobody has said what it draws when it is well. */
export const rule: Rule = {
  id: 'no-watts-range',
  title: 'It is not known what a healthy one draws',
  why: '"On" is not "working": without a watts range a dead element, a seized pump or a slipped coupling looks like a healthy one.',
  source: 'Running but pumping nothing shows as power below the healthy range; common practice, no source',
  grade: 'low',
  remedy: 'watts-range',
  check: ({ system }) =>
    system.equipment
      .filter(({ type, wattsRange }) => WATCHED.includes(type) && wattsRange === undefined)
      .map(({ name, ratedW }) => ({
        cause: name,
        consequence: 'Its power says nothing about whether it works.',
        figures: [
          { name: 'watts range', value: 'none' },
          ...(ratedW?.value == null ? [] : [figure('rated', ratedW.value, 'W')]),
        ],
      })),
  passing: () => example(),
  failing: () => example(withEquipment('blower', { wattsRange: undefined })),
};
