import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import { type Context, contextOf, type View } from '../context';
import type { FaultCase, SystemReview } from '../result';
import { subjectsOf } from '../subjects';
import type { Subject } from '../trial';

/** A system seen from its nominal values, under some credit. */
export interface Scene {
  context: Context;
  view: View;
}

/** One longer look at a system: what it needs again and again. */
export interface Look extends Scene {
  facility: Facility;
  system: System;
  on: string;
  review: SystemReview;
  /** What the review tried, with what came of it. */
  tried: { subject: Subject; case: FaultCase }[];
  /** The same system with one safeguard dead, made when first asked for. */
  without: (safeguard: string) => Scene;
}

/** Begin a longer look at a system that was reviewed. Nothing is simulated before it is asked for. */
export function lookAt(facility: Facility, system: System, on: string, review: SystemReview): Look {
  const context = contextOf(facility, system, on);
  const byId = new Map(review.cases.map((c) => [c.id, c]));
  const dead = new Map<string, Scene>();
  const look: Look = {
    context,
    view: context.view('nominal'),
    facility,
    system,
    on,
    review,
    tried: subjectsOf(facility, system).flatMap((subject) => {
      const found = byId.get(caseId(subject));
      return found ? [{ subject, case: found }] : [];
    }),
    without: (safeguard) => {
      const made = dead.get(safeguard) ?? sceneWithout(look, safeguard);
      dead.set(safeguard, made);
      return made;
    },
  };
  return look;
}

/** Id of the fault case that a subject is judged as. */
export function caseId({ fault, thing, state }: Subject): string {
  return `${fault.id}:${thing.key}:${state}`;
}

/** A safeguard that had no part in the normal day leaves that day as it is, so it need not be run again. */
function sceneWithout({ facility, system, on, view }: Look, safeguard: string): Scene {
  const context = contextOf(facility, system, on, safeguard);
  if (view.nominal.acted.has(safeguard)) return { context, view: context.view('nominal') };
  return { context, view: { ...view, standing: new Map(), told: new Map() } };
}
