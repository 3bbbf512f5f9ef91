import { changed, example, withSite } from './example/example';
import { alarmPathOf } from './facts/alarm-path';
import { circuitOf, failTogether, feedOf } from './facts/feeds';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** A part of the alarms' way goes dead together with what it should report. */
export const rule: Rule = {
  id: 'monitor-on-watched-circuit',
  title: 'Gateway, router or host hangs on a circuit that it should report',
  why: 'The trip that stops the pumps also silences the alarm about it.',
  source: 'Everything critical on the same strip as the alarm gateway is a silent loss; common practice, no source',
  grade: 'medium',
  remedy: 'gateway-power',
  check: (context) =>
    alarmPathOf(context).flatMap((monitor) => {
      const own = circuitOf(context, monitor.circuit);
      if (own === undefined) return [];
      const beside = context.system.equipment.filter((one) => {
        const other = circuitOf(context, one.circuit);
        return one.type !== 'light' && one.type !== 'other' && other !== undefined && failTogether(own, other);
      });
      if (beside.length === 0) return [];
      const feed = feedOf(own);
      const names = listed(beside.map(({ name }) => name));
      const consequence = `${feed.kind} ${feed.name} going dead takes ${names}, and with them the alarm that would say so.`;
      return [{ cause: monitor.name, consequence, figures: [{ name: feed.kind, value: feed.name }] }];
    }),
  passing: () => example(),
  failing: () => example(withSite(({ monitors }) => ({ monitors: changed(monitors, 'gateway', { circuit: 'air' }) }))),
};
