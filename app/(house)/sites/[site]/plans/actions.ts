'use server';

import { act } from '#server/gate/act';
import type { PlanChanged } from '#server/plans/change-plan';
import { writeTypedPlan, writeTypedPlanShape } from '#server/plans/plan-form';
import { putPlanInForce, putPlanInForceShape } from '#server/plans/put-plan-in-force';
import { sendBackPlan, sendBackPlanShape, withdrawPlan, withdrawPlanShape } from '#server/plans/return-plan';
import { submitPlan, submitPlanShape } from '#server/plans/submit-plan';

/** Pages that say something else once a plan has changed. */
const pages = ({ site, system, equipment }: PlanChanged) => [
  `/sites/${site}/plans/${system}/${equipment}`,
  `/sites/${site}/plans`,
  '/',
];

export const writeTypedPlanAction = act(writeTypedPlanShape, writeTypedPlan, pages);

export const submitPlanAction = act(submitPlanShape, submitPlan, pages);

export const putPlanInForceAction = act(putPlanInForceShape, putPlanInForce, pages);

export const sendBackPlanAction = act(sendBackPlanShape, sendBackPlan, pages);

export const withdrawPlanAction = act(withdrawPlanShape, withdrawPlan, pages);
