import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listRounds, listRoundsShape } from '#server/rounds/list-rounds';
import { RoundsBody } from '#ui/rounds/rounds-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { beginBesidesAction, beginRoundAction } from './actions';

export const metadata: Metadata = { title: 'Rounds' };

const asked = ask(listRoundsShape, listRounds);

export default async function RoundsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await asked({ site: decodeURIComponent(site) }));
  return <RoundsBody page={page} begin={beginRoundAction} besides={beginBesidesAction} />;
}
