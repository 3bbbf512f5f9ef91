import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getHandover, getHandoverShape } from '#server/handover/get-handover';
import { HandoverBody } from '#ui/handover/handover-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { takeBackAction } from '../rounds/actions';
import { endAnimalWatchAction, giveHandoverAction, takeHandoverHereAction, watchAnimalAction } from './actions';

const asked = ask(getHandoverShape, getHandover);

export const metadata: Metadata = { title: 'Handover' };

export default async function HandoverPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await asked({ site: decodeURIComponent(site) }));
  const actions = {
    give: giveHandoverAction,
    takeHere: takeHandoverHereAction,
    watch: watchAnimalAction,
    endWatch: endAnimalWatchAction,
    takeBack: takeBackAction,
  };
  return <HandoverBody page={page} actions={actions} />;
}
