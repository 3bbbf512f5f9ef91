import { example, withMore } from './example/example';
import { UV } from './example/dosed';
import { ofType, watchesFlowOrLevel } from './facts/equipment';
import type { Rule } from './rule';

/** Chiller, ozone, UV, carbon dioxide or dosing that goes on while the return stands. */
export const rule: Rule = {
  id: 'dosing-without-flow',
  title: 'What needs flow goes on without it',
  why: 'Into water that stands, a dose becomes a slug, an ozone or UV vessel boils or fills, and a chiller freezes.',
  source: 'Safe state when the return is lost: chiller, ozone, UV, CO2 and dosing off; common practice, no source',
  grade: 'medium',
  remedy: 'flow-interlock',
  check: (context) => {
    if (ofType(context, 'return-pump').length === 0) return [];
    const needing = ofType(context, 'chiller', 'ozone', 'uv', 'co2', 'doser');
    return needing
      .filter(({ plan: { regulation, cutOuts, interlocks } }) => {
        // A line that a person carries out is another rule's concern.
        const stops =
          cutOuts.some(({ quantity }) => quantity === 'level') ||
          interlocks.some((line) => watchesFlowOrLevel(context, line));
        return regulation.kind !== 'never' && !stops;
      })
      .map(({ name }) => ({
        cause: name,
        consequence: 'No device stops it when the return is lost.',
        figures: [{ name: 'stopped without flow', value: 'no' }],
      }));
  },
  passing: () => example(withMore(UV)),
  failing: () => example(withMore({ ...UV, plan: { ...UV.plan, interlocks: [] } })),
};
