import type { Equipment } from '../../facility/system';
import { example, withEquipment } from './example/example';
import { circuitOf } from './facts/feeds';
import type { Rule } from './rule';

/** Whether a piece of equipment needs power to do its work: a valve and a filter without a motor do not. */
function needsPower({ type, ratedW }: Equipment): boolean {
  if (type === 'drain-valve') return false;
  return (type !== 'filter' && type !== 'other') || ratedW !== undefined;
}

/** Equipment of which it is not known what feeds it. */
export const rule: Rule = {
  id: 'equipment-on-no-circuit',
  title: 'It is not known which circuit feeds a piece of equipment',
  why: 'The review then takes it to hang on a circuit of its own, and cannot see what goes dead together.',
  source: 'An unknown is never silently filled in (design rule of Holdfast)',
  grade: 'low',
  remedy: 'name-circuit',
  check: (context) =>
    context.system.equipment
      .filter((one) => needsPower(one) && circuitOf(context, one.circuit) === undefined)
      .map(({ name, circuit }) => ({
        cause: name,
        consequence: 'It may fail together with what is meant to stand in for it.',
        figures: [{ name: 'circuit', value: circuit ?? 'none named' }],
      })),
  passing: () => example(),
  failing: () => example(withEquipment('blower', { circuit: undefined })),
};
