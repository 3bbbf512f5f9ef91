import { listCallOuts, listCallOutsShape } from '#server/call-outs/list-call-outs';
import { ask } from '#server/gate/ask';
import { CallOutsBody } from '#ui/call-outs/call-outs-body';
import { answered } from '../../../view/answered';
import type { SiteAddress } from '../ask-site';
import { beginCallOutAction, endCallOutAction, extendCallOutAction, seeToCallOutAction } from './actions';

const askCallOuts = ask(listCallOutsShape, listCallOuts);

export const metadata = { title: 'In alone' };

export default async function CallOutsPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askCallOuts({ site: decodeURIComponent(site) }));
  const actions = {
    begin: beginCallOutAction,
    extend: extendCallOutAction,
    seeTo: seeToCallOutAction,
    end: endCallOutAction,
  };
  return <CallOutsBody page={page} actions={actions} />;
}
