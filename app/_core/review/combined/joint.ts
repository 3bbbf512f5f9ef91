import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import { FAULTS } from '../../faults/catalogue';
import { noUpset } from '../../faults/upset';
import type { Health } from '../../simulate/device';
import type { View } from '../context';
import { coursesOf } from '../courses';
import { outcomesOf } from '../outcome';
import { repairTime } from '../repair';
import type { Judgement } from '../result';
import type { Subject } from '../trial';
import { partId, faultPart } from './combination';
import type { Scene } from './look';

/** Several faults as one: all befall together, and all that any of them shows is shown. */
export function jointly(members: readonly Subject[]): Subject {
  const [first] = members;
  if (!first) throw new Error('nothing befalls nothing');
  const id = members.map((one) => partId(faultPart(one))).join('+');
  return {
    state: first.state,
    thing: first.thing,
    fault: {
      ...first.fault,
      id,
      states: 'running',
      threatens: 'either',
      shows: [...new Set(members.flatMap(({ fault }) => fault.shows))],
      befall: (upset, _, facility, system) => {
        for (const { fault, thing } of members) fault.befall(upset, thing, facility, system);
      },
    },
  };
}

/**
 * Judge several faults that befall together, as claimed. It takes as long to put right as the longest of them by itself.
 * @param people who can come, by hour of the week; whoever is on the rota when left out
 */
export function judgeJoint(
  { context, view }: Scene,
  members: readonly Subject[],
  people?: (hour: number) => Pick<View, 'cover' | 'walks'>,
): Judgement {
  const subject = jointly(members);
  const repairS = Math.max(...members.map((one) => repairTime(context, view, one)));
  const courses = coursesOf(context, view, subject, 'claimed');
  const outcomes = outcomesOf(context, view, subject, courses, 'claimed', repairS, people);
  return { verdict: outcomes[0]?.verdict ?? 'holds', outcomes, acted: [] };
}

/** The failure mode of the catalogue that leaves a piece of equipment in some health and does nothing else; null without one. */
export function failing(facility: Facility, system: System, key: string, health: Health): Subject | null {
  // A mode whose case stands for another's is the one that the review tells of.
  for (const fault of FAULTS.filter(({ sameAs }) => sameAs === undefined)) {
    const thing = fault.things(facility, system).find((one) => one.kind === 'equipment' && one.key === key);
    if (!thing) continue;
    const upset = noUpset();
    fault.befall(upset, thing, facility, system);
    const plain = noUpset();
    plain.health.set(key, health);
    if (isAlike(upset, plain)) return { fault, thing, state: 'normal' };
  }
  return null;
}

function isAlike(a: object, b: object): boolean {
  const plain = (upset: object) =>
    JSON.stringify(upset, (_, value: unknown) => (value instanceof Map || value instanceof Set ? [...value] : value));
  return plain(a) === plain(b);
}
