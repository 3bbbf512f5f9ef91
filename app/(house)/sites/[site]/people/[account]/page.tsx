import { ask } from '#server/gate/ask';
import { getMember, getMemberShape } from '#server/people/list-people';
import { MemberBody } from '#ui/people/member-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { changeRoleAction, erasePersonAction, letGoAction, linkToRotaAction, makeLinkAction } from '../actions';

interface Address {
  params: Promise<SiteAddress & { account: string }>;
}

const askMember = ask(getMemberShape, getMember);

const actions = {
  changeRole: changeRoleAction,
  linkToRota: linkToRotaAction,
  makeLink: makeLinkAction,
  letGo: letGoAction,
  erase: erasePersonAction,
};

export const metadata = { title: 'Person' };

export default async function MemberPage({ params }: Address) {
  const { site, account } = await params;
  const page = answered(await askMember({ site: decodeURIComponent(site), account }));
  return <MemberBody page={page} actions={actions} />;
}
