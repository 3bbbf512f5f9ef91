/** What a form about a plan gets back: the version it is about, or a refusal with its sentence and every fault. */
export type PlanAnswer = { ok: true; value: { version: number } } | { ok: false; said: string; faults: string[] };

/** A server action about a plan; what it answered before makes no difference to it. */
export type PlanAction = (before: null, form: FormData) => Promise<PlanAnswer>;

/** What may be done with a version that waits. */
export interface PlanActions {
  submit: PlanAction;
  putInForce: PlanAction;
  sendBack: PlanAction;
  withdraw: PlanAction;
}
