import { example, withMore } from './example/example';
import { SUPPLY } from './example/dosed';
import { ofType } from './facts/equipment';
import type { Rule } from './rule';

/** An hour of the night in which nobody watches a fill, minutes after midnight. Common practice, no source. */
const NIGHT_MIN = 120;

/** Water from the mains that runs at night, or with nothing to end it. */
export const rule: Rule = {
  id: 'fill-at-night',
  title: 'A fill from the mains runs unattended',
  why: 'At night a valve that stays open has hours: fresh, chlorinated water without end, and then the floor.',
  source: 'No unattended fills at night; common practice, no source',
  grade: 'medium',
  remedy: 'limit-fill',
  check: (context) =>
    ofType(context, 'top-off', 'supply').flatMap(({ name, type, source, plan: { regulation } }) => {
      if (source !== 'mains') return [];
      const atNight = regulation.kind === 'hours' && covers(regulation.from, regulation.to, NIGHT_MIN);
      // A top-off without a run limit is another rule's concern.
      const endless = type === 'supply' && regulation.kind === 'level' && regulation.runLimitMin === undefined;
      if (!atNight && !endless) return [];
      return [
        {
          cause: name,
          consequence: atNight ? 'It fills while nobody watches.' : 'Nothing but its level switch ends it.',
          figures: [{ name: 'from the mains', value: atNight ? 'at night' : 'without a run limit' }],
        },
      ];
    }),
  passing: () => example(withMore(SUPPLY)),
  failing: () =>
    example(
      withMore({
        ...SUPPLY,
        plan: { ...SUPPLY.plan, regulation: { kind: 'hours', from: '22:00', to: '05:00', by: 'controller' } },
      }),
    ),
};

function covers(from: string, to: string, minute: number): boolean {
  const [a, b] = [minuteOf(from), minuteOf(to)];
  return a <= b ? a <= minute && minute < b : minute >= a || minute < b;
}

function minuteOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return 60 * hours + minutes;
}
