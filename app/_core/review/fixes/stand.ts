import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import { caseId, type Scene } from '../combined/look';
import { contextOf } from '../context';
import { coursesOf } from '../courses';
import { gravestOutcome } from '../gravest';
import { judgementOf } from '../judgement';
import type { Judgement } from '../result';
import { subjectsOf } from '../subjects';
import type { Subject } from '../trial';
import { caseTitle } from '../words';

/** Rank from which nothing has to be done (`gravest`). */
const NOT_GRAVE = 100;

/** One fault case as claimed. */
export interface Judged {
  subject: Subject;
  title: string;
  judgement: Judgement;
}

/** A description with what its fault cases come to. */
export interface Stand extends Scene {
  facility: Facility;
  system: System;
  /** By id of the fault case. */
  cases: Map<string, Judged>;
}

/** A description that nothing was judged of yet. */
export function sceneOf(facility: Facility, key: string, on: string): Scene & Pick<Stand, 'facility' | 'system'> {
  const system = facility.systems.find((one) => one.key === key);
  if (!system) throw new Error(`no system "${key}" is left`);
  const context = contextOf(facility, system, on);
  return { facility, system, context, view: context.view('nominal') };
}

/** Judge one fault case as claimed. */
export function judgedIn({ context, view }: Scene, subject: Subject): Judged {
  const courses = coursesOf(context, view, subject, 'claimed');
  const judgement = judgementOf(context, view, subject, courses, 'claimed');
  return { subject, title: caseTitle(titled(subject)), judgement };
}

/** What a title is made of. */
export function titled({ fault, thing, state }: Subject) {
  return { title: fault.title, thing, state };
}

/** Every subject of a description by the id of its fault case. */
export function subjectsById({ facility, system }: Pick<Stand, 'facility' | 'system'>): Map<string, Subject> {
  return new Map(subjectsOf(facility, system).map((one) => [caseId(one), one]));
}

/** Whether something has to be done about a judgement. */
export function isOpen(judgement: Judgement): boolean {
  return gravestOutcome(judgement).rank < NOT_GRAVE;
}

/** Ids of the fault cases that something has to be done about. */
export function openCases({ cases }: Stand): string[] {
  return [...cases].filter(([, { judgement }]) => isOpen(judgement)).map(([id]) => id);
}
