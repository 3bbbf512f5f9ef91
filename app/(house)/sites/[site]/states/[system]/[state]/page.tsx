import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getStateForm, getStateFormShape } from '#server/states/get-state-form';
import { StateFormBody } from '#ui/states/state-form-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { authoriseStateAction, beginStateAction, endStateAction, putOffStateAction } from '../../actions';

interface Address {
  params: Promise<{ site: string; system: string; state: string }>;
}

const asked = ask(getStateFormShape, getStateForm);

export const metadata: Metadata = { title: 'State' };

export default async function StatePage({ params }: Address) {
  const { site, system, state } = await params;
  const page = answered(await asked({ site: decodeURIComponent(site), system: decodeURIComponent(system), state }));
  const { units } = await chosenView();
  const actions = {
    begin: beginStateAction,
    putOff: putOffStateAction,
    end: endStateAction,
    authorise: page.mayAuthorise ? authoriseStateAction : null,
  };
  return <StateFormBody page={page} units={units} actions={actions} />;
}
