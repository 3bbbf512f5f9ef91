import { ask } from '#server/gate/ask';
import { listPeople, listPeopleShape } from '#server/people/list-people';
import { PeopleBody } from '#ui/people/people-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { inviteAction } from './actions';

const askPeople = ask(listPeopleShape, listPeople);

export const metadata = { title: 'People' };

export default async function PeoplePage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askPeople({ site: decodeURIComponent(site) }));
  return <PeopleBody page={page} invite={inviteAction} />;
}
