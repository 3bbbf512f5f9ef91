import { concerned } from '../../in-place';
import { asJudged, type Cause } from './cause';

/** One probe that regulates several pieces of equipment: they err together, in the way the probe does. */
export const probe: Cause = (look) =>
  look.tried.flatMap(({ subject, case: c }) => {
    if (subject.thing.kind !== 'sensor' || subject.state !== 'normal') return [];
    const ruled = concerned(look.context, subject.thing);
    const parts = ruled.map(({ key, name }) => ({
      kind: 'fault' as const,
      fault: c.fault,
      title: c.title,
      thing: { kind: 'equipment' as const, key, name },
    }));
    return asJudged(look, c.id, parts, [], `${c.title}: ${subject.thing.name} regulates them all`);
  });
