import type { Metadata } from 'next';
import { Suspense } from 'react';
import { PlanPageBody } from '#ui/plans/plan-page';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { putPlanInForceAction, sendBackPlanAction, submitPlanAction, withdrawPlanAction } from '../../actions';
import { askPlan, type PlanAddress } from './ask-plan';
import { ReviewWith } from './review-with';

interface Address {
  params: Promise<PlanAddress>;
  searchParams: Promise<{ from?: string | string[]; to?: string | string[] }>;
}

const ACTIONS = {
  submit: submitPlanAction,
  putInForce: putPlanInForceAction,
  sendBack: sendBackPlanAction,
  withdraw: withdrawPlanAction,
};

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askPlan(await params);
  return { title: answer.ok ? `Plan of ${answer.value.equipment.name}` : 'No such plan' };
}

export default async function PlanPage({ params, searchParams }: Address) {
  const address = await params;
  const page = answered(await askPlan(address));
  const { from, to } = await searchParams;
  const { units } = await chosenView();
  return (
    <PlanPageBody
      page={page}
      units={units}
      actions={ACTIONS}
      compared={{ from: numberOf(from), to: numberOf(to) }}
      reviewWith={(version) => (
        <>
          <Suspense fallback={<p role="status">What becomes of its own faults is being computed…</p>}>
            <ReviewWith address={address} version={version} part="piece" />
          </Suspense>
          <Suspense fallback={<p role="status">What the review would say is being computed…</p>}>
            <ReviewWith address={address} version={version} part="whole" />
          </Suspense>
        </>
      )}
    />
  );
}

function numberOf(text: string | string[] | undefined): number | null {
  return typeof text === 'string' && /^\d{1,7}$/.test(text) ? Number(text) : null;
}
