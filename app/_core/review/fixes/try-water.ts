import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import { caseId } from '../combined/look';
import { concerned } from '../in-place';
import { reasonNot } from '../reason-not';
import { remediesOf } from '../remedies-of';
import type { Subject } from '../trial';
import { type Candidate, changed } from './candidates';
import type { After } from './effects';
import { isOpen, type Judged, judgedIn, sceneOf, type Stand, subjectsById } from './stand';

/**
 * Judge what a change of the water touches: fault cases that are open and are answered by it, every case of what is changed
 * (there its side effects are), and every case of what is new.
 * @param whole every case instead
 * @returns null where the system as changed cannot be judged: its plan does harm without any fault
 */
export function tryWater(stand: Stand, on: string, candidate: Candidate, whole = false): After | null {
  const scene = sceneOf(changed(stand, candidate), stand.system.key, on);
  if (reasonNot(scene.view)) return null;
  const different = differences(stand, scene);
  const after: After = new Map();
  for (const [id, subject] of subjectsById(scene)) {
    const known = stand.cases.get(id);
    const isMeant = known
      ? whole || touches(stand, scene, candidate, known, different)
      : subject.state === 'normal' && different.has(subject.thing.key);
    if (isMeant) after.set(id, judgedIn(scene, subject));
  }
  return after;
}

type Described = { facility: Facility; system: System };

/** Keys of what is described otherwise, or is new. */
function differences(before: Described, after: Described): Set<string> {
  const lists = ({ facility: f, system: s }: Described) =>
    [s.equipment, s.tanks, s.sensors, f.circuits, f.monitors].flatMap((list): [string, string][] =>
      list.map((one) => [one.key, JSON.stringify(one)]),
    );
  const was = new Map(lists(before));
  return new Set(lists(after).flatMap(([key, text]) => (was.get(key) === text ? [] : [key])));
}

function touches(
  stand: Stand,
  scene: Pick<Stand, 'context' | 'system'>,
  { remedy }: Candidate,
  { subject, judgement }: Judged,
  different: ReadonlySet<string>,
): boolean {
  const { thing } = subject;
  if (different.has(thing.key) || isAbout(stand, scene, subject, different)) return true;
  if (!isOpen(judgement) || isOther(stand, subject, different)) return false;
  return remediesOf(stand.context, subject).includes(remedy.id);
}

/** Whether a fault is of what is changed: of its probe, its circuit, its supply, or of a state that its plan speaks of. */
function isAbout(
  stand: Stand,
  scene: Pick<Stand, 'context'>,
  { thing }: Subject,
  different: ReadonlySet<string>,
): boolean {
  switch (thing.kind) {
    case 'state':
    case 'system':
      return true;
    case 'site':
      return stand.facility.circuits.some(({ key }) => different.has(key));
    case 'sensor':
    case 'circuit':
    case 'rcd': {
      const about = [...concerned(stand.context, thing), ...concerned(scene.context, thing)];
      return about.some(({ key, circuit }) => different.has(key) || (circuit !== undefined && different.has(circuit)));
    }
    case 'equipment':
    case 'tank':
    case 'gateway':
    case 'room':
    case 'matter':
      return false;
  }
}

/** Whether it is done to another one of the same type: a cut-out on one heater is no answer to the other. */
function isOther({ system }: Stand, { thing }: Subject, different: ReadonlySet<string>): boolean {
  const own = system.equipment.find(({ key }) => key === thing.key);
  const done = system.equipment.filter(({ key }) => different.has(key));
  return own !== undefined && !done.includes(own) && done.some(({ type }) => type === own.type);
}

/** Every case of a description judged anew, for those that are followed and for what is new. */
export function restated(stand: Stand, on: string, candidate: Candidate, after: After): Stand {
  const scene = sceneOf(changed(stand, candidate), stand.system.key, on);
  const subjects = subjectsById(scene);
  const cases = new Map<string, Judged>();
  for (const [id, judged] of [...stand.cases, ...after]) {
    const subject = subjects.get(id);
    if (subject) cases.set(caseId(subject), { ...judged, subject });
  }
  return { ...scene, cases };
}
