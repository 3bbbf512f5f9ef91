import { ask } from '#server/gate/ask';
import { getPlansAt, getPlansAtShape } from '#server/plans/get-plans-at';
import { PlansAtPageBody } from '#ui/plans/plans-at-page';
import { answered } from '../../../../view/answered';
import { chosenView } from '../../../../view/chosen-view';

const askPlansAt = ask(getPlansAtShape, getPlansAt);

interface Address {
  params: Promise<{ site: string; system: string }>;
  searchParams: Promise<{ day?: string | string[]; time?: string | string[] }>;
}

export const metadata = { title: 'Plans of a system' };

export default async function PlansAtPage({ params, searchParams }: Address) {
  const { site, system } = await params;
  const { day, time } = await searchParams;
  const page = answered(
    await askPlansAt({ site: decodeURIComponent(site), system: decodeURIComponent(system), day, time }),
  );
  const { units } = await chosenView();
  return <PlansAtPageBody page={page} units={units} />;
}
