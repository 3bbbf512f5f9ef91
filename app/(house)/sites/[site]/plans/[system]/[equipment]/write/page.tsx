import { ask } from '#server/gate/ask';
import { getPlanForm, planFormShape } from '#server/plans/plan-form';
import { WritePlanPageBody } from '#ui/plans/write-page';
import { answered } from '../../../../../../view/answered';
import { chosenView } from '../../../../../../view/chosen-view';
import { writeTypedPlanAction } from '../../../actions';
import type { PlanAddress } from '../ask-plan';

const askForm = ask(planFormShape, getPlanForm);

interface Address {
  params: Promise<PlanAddress>;
  searchParams: Promise<{ from?: string | string[] }>;
}

export const metadata = { title: 'Write a plan' };

export default async function WritePlanPage({ params, searchParams }: Address) {
  const address = await params;
  const [site, system, equipment] = [address.site, address.system, address.equipment].map(decodeURIComponent);
  const { from } = await searchParams;
  const { units } = await chosenView();
  const begun = typeof from === 'string' ? { from } : {};
  const form = answered(await askForm({ site, system, equipment, units, ...begun }));
  return <WritePlanPageBody form={form} units={units} write={writeTypedPlanAction} />;
}
