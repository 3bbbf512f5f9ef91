import { ask } from '#server/gate/ask';
import { getPlanForm, planFormShape } from '#server/plans/plan-form';
import { Page } from '#ui/frame/page';
import { plansAt } from '#ui/plans/data';
import { PlanFormBody } from '#ui/plans/plan-form';
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
  const form = answered(
    await askForm({ site, system, equipment, units, ...(typeof from === 'string' ? { from } : {}) }),
  );
  const at = [form.site.key, form.system.key, form.equipment.key] as const;
  return (
    <Page
      title={`Write the plan of ${form.equipment.name}`}
      over={[
        { href: plansAt(at[0]), name: 'Plans' },
        { href: plansAt(...at), name: form.equipment.name },
      ]}
      lead={
        <p>
          It begins from version {form.from}. Highest authority first; the order of the layers is fixed. Only what a
          device carries out is credited as automatic.
        </p>
      }
    >
      <PlanFormBody form={form} units={units} write={writeTypedPlanAction} />
    </Page>
  );
}
