import { example, withPlan } from './example/example';
import { byDevice, ofType } from './facts/equipment';
import { figure } from './facts/words';
import type { Rule } from './rule';

/** A top-off that runs until its level switch says stop, for however long that takes. */
export const rule: Rule = {
  id: 'top-off-without-run-limit',
  title: 'A top-off has no run limit that a device keeps',
  why: 'A float that hangs low keeps it running: salinity falls until the reservoir is empty, the sump full or somebody comes.',
  source:
    'A float stuck and 57 L went in before a second one stopped it; without one, an earlier event lost most of the corals (packedhead.net/p237)',
  grade: 'medium',
  remedy: 'run-limit',
  check: (context) =>
    ofType(context, 'top-off').flatMap(({ name, plan: { regulation }, flowLPerH }) => {
      if (regulation.kind !== 'level' && regulation.kind !== 'always') return [];
      const limited = regulation.kind === 'level' && regulation.runLimitMin !== undefined;
      if (limited && byDevice(regulation.by)) return [];
      const rate = flowLPerH?.value ?? null;
      const consequence = limited
        ? 'Its longest run is watched by a person, and nobody watches every run.'
        : 'Once its level switch sticks, nothing ends its run.';
      return [
        {
          cause: name,
          consequence,
          figures: [
            { name: 'run limit by a device', value: 'none' },
            ...(rate === null ? [] : [figure('flow', rate, 'L/h')]),
          ],
        },
      ];
    }),
  passing: () => example(),
  failing: () =>
    example(
      withPlan('top-off', ({ regulation }) =>
        regulation.kind === 'level'
          ? { regulation: { ...regulation, runLimitMin: undefined, runLimitSafeguard: undefined } }
          : {},
      ),
    ),
};
