import type { Facility } from '#core/facility/facility';
import type { Equipment, System } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import { siteAddress } from '../frame/site-address';

export type PlanStatusWord = 'draft' | 'submitted' | 'in-force' | 'superseded' | 'withdrawn' | 'sent-back';

/** Something that a version of a plan came to be. */
export interface PlanMoment {
  status: PlanStatusWord;
  at: Date;
  /** Name of who did it. */
  by: string | null;
  reason: string | null;
}

/** One version of a plan. */
export interface PlanVersionData {
  version: number;
  plan: Plan;
  status: PlanStatusWord;
  writtenAt: Date;
  writtenBy: string | null;
  isOwn: boolean;
  reason: string | null;
  life: PlanMoment[];
}

/** What the page of a plan is made from. */
export interface PlanPageData {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  system: System;
  equipment: Equipment;
  /** The latest first. */
  versions: PlanVersionData[];
  mayWrite: boolean;
  mayApprove: boolean;
  isSoleKeeper: boolean;
}

/** Address of the plans of a site, of a system, or of one piece of its equipment. */
export function plansAt(...[site, system, equipment]: [site: string, system?: string, equipment?: string]): string {
  return siteAddress(site, 'plans', ...[system, equipment].filter((part) => part !== undefined));
}

export const STATUS_WORDS: Record<PlanStatusWord, string> = {
  draft: 'draft',
  submitted: 'submitted',
  'in-force': 'in force',
  superseded: 'superseded',
  withdrawn: 'withdrawn',
  'sent-back': 'sent back',
};
