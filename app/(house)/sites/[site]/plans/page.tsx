import { ask } from '#server/gate/ask';
import { listPlans, listPlansShape } from '#server/plans/list-plans';
import { PlansPageBody } from '#ui/plans/plans-page';
import { answered } from '../../../view/answered';
import { chosenView } from '../../../view/chosen-view';
import type { SiteAddress } from '../ask-site';

const askPlans = ask(listPlansShape, listPlans);

export const metadata = { title: 'Plans' };

export default async function PlansPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askPlans({ site: decodeURIComponent(site) }));
  const { units } = await chosenView();
  return <PlansPageBody page={page} units={units} />;
}
