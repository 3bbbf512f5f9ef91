import { ask } from '#server/gate/ask';
import { missedTests, missedTestsShape } from '#server/calls/missed-tests';
import { listPeople, listPeopleShape } from '#server/people/list-people';
import { PeopleBody } from '#ui/people/people-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { inviteAction } from './actions';

const askPeople = ask(listPeopleShape, listPeople);

const askMissed = ask(missedTestsShape, missedTests);

export const metadata = { title: 'People' };

export default async function PeoplePage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askPeople({ site: decodeURIComponent(site) }));
  const missed = answered(await askMissed({ site: decodeURIComponent(site) }));
  return <PeopleBody page={page} missed={missed} invite={inviteAction} />;
}
