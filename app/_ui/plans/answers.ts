import type { FormAction, FormAnswer } from '../form/answer';

/** What a form about a plan gets back: the version it is about, or a refusal. */
export type PlanAnswer = FormAnswer<{ version: number }>;

/** A server action about a plan. */
export type PlanAction = FormAction<{ version: number }>;

/** What may be done with a version that waits. */
export interface PlanActions {
  submit: PlanAction;
  putInForce: PlanAction;
  sendBack: PlanAction;
  withdraw: PlanAction;
}
