import { example, withPlan } from './example/example';
import { byDevice, watchesFlowOrLevel } from './facts/equipment';
import type { Rule } from './rule';

/** An interlock that believes the return to run because it was told to. */
export const rule: Rule = {
  id: 'return-proved-by-command',
  title: 'The return counts as running because it was told to',
  why: '"On" is not "working": a pump that is dead, unplugged or runs without pumping was told to run as well.',
  source: 'That something is on never counts as proof that it pumps; common practice, no source',
  grade: 'medium',
  remedy: 'prove-return',
  check: (context) =>
    context.system.equipment.flatMap((one) => {
      const lines = one.plan.interlocks.filter((line) => byDevice(line.by) && watchesFlowOrLevel(context, line));
      // A second interlock with a true proof makes up for it.
      const isBelieved = lines.every(({ when }) => when.kind === 'return-lost' && when.provedBy === 'command');
      if (lines.length === 0 || !isBelieved) return [];
      const consequence = 'Its interlock acts when somebody switches the return off, not when the return fails.';
      return [{ cause: one.name, consequence, figures: [{ name: 'return proved by', value: 'its command' }] }];
    }),
  passing: () =>
    example(
      withPlan('heater-1', ({ interlocks }) => ({
        interlocks: interlocks.map((line) => ({ ...line, when: { kind: 'return-lost', provedBy: 'watts' } })),
      })),
    ),
  failing: () =>
    example(
      withPlan('heater-1', ({ interlocks }) => ({
        interlocks: interlocks.map((line) => ({ ...line, when: { kind: 'return-lost', provedBy: 'command' } })),
      })),
    ),
};
