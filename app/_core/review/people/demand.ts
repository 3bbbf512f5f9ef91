/**
 * What fault cases ask of people, and so what any rota makes of them without running the model again. Whatever changes the water
 * makes other courses; then a review anew says what they ask.
 */
import type { Column } from '../../plans/credit';
import type { EquipmentType } from '../../facility/system';
import type { Aspect } from '../../rounds/slot';
import type { Call } from '../notice';
import type { Harm } from '../result';

/** What a class of harm leaves people: its first harm, and the last chance, s after the onset. */
export interface Deadline {
  harm: Harm;
  lastS: number;
}

/** One course: what is raised and shown, and until when it has to be put right. */
export interface CourseDemand {
  /** Alarms that are counted on and that somebody answers. */
  calls: Call[];
  /** When each aspect of a round shows it, s after the onset. */
  signs: [Aspect, number][];
  /** By class of harm, gravest first; empty where nothing is harmed. */
  deadlines: Deadline[];
}

/** The courses of a fault case in one column. */
export interface ColumnDemand {
  courses: CourseDemand[];
  /** Which of them stands for each hour of the day. */
  byHour: number[];
}

/** What one fault case asks of people. */
export interface CaseDemand extends Record<Column, ColumnDemand> {
  /** Id of the fault case. */
  id: string;
  title: string;
  /** Type of the equipment that has to be put right, which may ask for a competence; null: other work. */
  type: EquipmentType | null;
  /** From standing before it to having what the work needs, s; 0 where that lies on site. */
  spareS: number;
  /** Work then, s; null: nobody has the means. */
  workS: number | null;
}

/** What the fault cases of a system ask of people: those that harm something in either column. Plain values. */
export interface SystemDemand {
  system: string;
  cases: CaseDemand[];
}
