import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getChanges, getChangesShape } from '#server/rota/changes/get-changes';
import { ChangesBody } from '#ui/rota/changes-body';
import { answered } from '../../../../view/answered';
import type { SiteAddress } from '../../ask-site';
import { answerChangeAction, askLeaveAction, askSwapAction } from './actions';

const askChanges = ask(getChangesShape, getChanges);

export const metadata: Metadata = { title: 'Leave and swaps' };

export default async function ChangesPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askChanges({ site: decodeURIComponent(site) }));
  return <ChangesBody page={page} leave={askLeaveAction} swap={askSwapAction} answer={answerChangeAction} />;
}
