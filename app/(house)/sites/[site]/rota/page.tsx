import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { missedTests, missedTestsShape } from '#server/calls/missed-tests';
import { getRota, getRotaShape } from '#server/rota/get-rota';
import { RotaBody } from '#ui/rota/rota-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { endFeedAction, makeFeedAction } from './actions';

const askRota = ask(getRotaShape, getRota);

const askMissed = ask(missedTestsShape, missedTests);

export const metadata: Metadata = { title: 'Rota' };

export default async function RotaPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askRota({ site: decodeURIComponent(site) }));
  const missed = answered(await askMissed({ site: decodeURIComponent(site) }));
  return <RotaBody page={page} missed={missed} make={makeFeedAction} end={endFeedAction} />;
}
