import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { listStates, listStatesShape } from '#server/states/list-states';
import { StatesBody } from '#ui/states/states-body';
import { answered } from '../../../view/answered';
import { chosenView } from '../../../view/chosen-view';
import type { SiteAddress } from '../ask-site';
import { takeBackAction } from '../rounds/actions';
import {
  addNoticeAction,
  answerAskedAction,
  endNoticeAction,
  authoriseStateAction,
  endStateAction,
  lookAfterStateAction,
  putOffStateAction,
  signSecondAction,
} from './actions';

const askStates = ask(listStatesShape, listStates);

export const metadata: Metadata = { title: 'States' };

export default async function StatesPage({ params }: { params: Promise<SiteAddress> }) {
  const { site } = await params;
  const page = answered(await askStates({ site: decodeURIComponent(site) }));
  const { units } = await chosenView();
  const actions = {
    putOff: putOffStateAction,
    end: endStateAction,
    authorise: page.mayAuthorise ? authoriseStateAction : null,
    look: lookAfterStateAction,
    second: signSecondAction,
    takeBack: takeBackAction,
    answer: answerAskedAction,
    addNotice: addNoticeAction,
    endNotice: endNoticeAction,
  };
  return <StatesBody page={page} units={units} actions={actions} />;
}
