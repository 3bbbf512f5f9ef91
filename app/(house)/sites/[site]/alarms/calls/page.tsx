import { CHANNELS } from '#core/alarms/channels';
import { listCalls, listCallsShape } from '#server/calls/list-calls';
import { ask } from '#server/gate/ask';
import { CallsBody } from '#ui/calls/calls-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { answerTestCallAction, makeTestCallAction, removeWebhookAction, setWebhookAction } from './actions';

const askCalls = ask(listCallsShape, listCalls);

export const metadata = { title: 'How people are called' };

interface CallsAddress {
  params: Promise<SiteAddress>;
  searchParams: Promise<{ by?: string | string[] }>;
}

export default async function CallsPage({ params, searchParams }: CallsAddress) {
  const [{ site }, { by }] = await Promise.all([params, searchParams]);
  const page = answered(await askCalls({ site: decodeURIComponent(site) }));
  const actions = {
    call: makeTestCallAction,
    answer: answerTestCallAction,
    setWebhook: setWebhookAction,
    removeWebhook: removeWebhookAction,
  };
  return <CallsBody page={page} by={CHANNELS.find((channel) => channel === by) ?? null} actions={actions} />;
}
