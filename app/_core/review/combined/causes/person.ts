import { noUpset } from '../../../faults/upset';
import { type Duty, staffed } from '../../../rota/cover';
import { forward, HOUR } from '../../../time/week';
import type { View } from '../../context';
import { judgeJoint } from '../joint';
import type { Look } from '../look';
import type { Subject } from '../../trial';
import { faultPart } from '../combination';
import { type Cause, graveAlone } from './cause';

/**
 * One person: whoever should end a state by hand is also the one who would notice, answer and walk the rounds. Nobody who is on
 * duty when the state should end comes; the next on the rota do.
 */
export const person: Cause = (look) =>
  neverEnded(look).map((subject) => ({
    state: subject.state,
    parts: [
      faultPart(subject),
      { kind: 'safeguard', key: 'whoever-is-on', name: 'whoever is on duty, who would answer and walk the round' },
    ],
    because: 'one person starts it, should end it, and is the one who would notice',
    alone: graveAlone(look, [subject]),
    judge: () => judgeJoint(look, [subject], withoutThoseOn(look.view)),
  }));

/** States that a person ends, never ended, as far as the review has judged them. */
function neverEnded({ facility, system, tried }: Look): Subject[] {
  const byHand = new Set<string>(system.states.filter(({ endsBy }) => endsBy === 'person').map(({ name }) => name));
  return tried.flatMap(({ subject }) => {
    const upset = noUpset();
    subject.fault.befall(upset, subject.thing, facility, system);
    return byHand.has(subject.state) && upset.stateNeverEnds ? [subject] : [];
  });
}

/** Cover and rounds by hour of the week, less everybody who is on duty at that hour, until they are on again. */
function withoutThoseOn({ cover, walks }: View): (hour: number) => Pick<View, 'cover' | 'walks'> {
  return (hour) => {
    const at = hour * HOUR;
    const isOn = (duty: Duty) => forward(duty.fromS, at) < duty.lengthS;
    const gone = new Set(cover.duties.filter(isOn).map((duty) => duty.person));
    const left = {
      ...cover,
      duties: cover.duties.filter((duty) => !gone.has(duty.person)),
      fromHome: new Map([...cover.fromHome].filter(([key]) => !gone.has(key))),
    };
    return { cover: left, walks: walks.filter((walk) => staffed(left, walk.atS)) };
  };
}
