import { example, withMore, withoutAlarms } from './example/example';
import { OZONE, REDOX_PROBES } from './example/dosed';
import { alarmsOn } from './facts/alarms';
import { ofType } from './facts/equipment';
import { listed } from './facts/words';
import type { Rule } from './rule';

/** Ozone, and no alarm on oxidant or redox. */
export const rule: Rule = {
  id: 'no-oxidant-alarm',
  title: 'No alarm on oxidant or redox where ozone is made',
  why: 'Residual oxidant burns gills within hours, and nothing is seen before the animals show it.',
  source: 'Oxidant test each shift and a second redox probe while ozone is on; common practice, no source',
  grade: 'medium',
  remedy: 'oxidant-alarm',
  check: (context) => {
    const ozone = ofType(context, 'ozone');
    const alarms = [...alarmsOn(context, 'redox'), ...alarmsOn(context, 'oxidant')];
    if (ozone.length === 0 || alarms.some(({ above }) => above !== undefined)) return [];
    return [
      {
        cause: listed(ozone.map(({ name }) => name).sort()),
        consequence: 'Nobody is called before the animals show it.',
        figures: [{ name: 'alarms on oxidant or redox', value: 'none' }],
      },
    ];
  },
  passing: () => example(withMore(OZONE), REDOX_PROBES),
  failing: () => example(withMore(OZONE), REDOX_PROBES, withoutAlarms('redox-high')),
};
