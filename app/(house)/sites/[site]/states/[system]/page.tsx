import type { Metadata } from 'next';
import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getStates, getStatesShape } from '#server/states/get-states';
import { SystemStatesBody } from '#ui/states/system-states-body';
import { answered } from '../../../../view/answered';
import { chosenView } from '../../../../view/chosen-view';
import {
  authoriseStateAction,
  beginStateAction,
  endStateAction,
  endTimedAction,
  putOffStateAction,
  timeStateAction,
} from '../actions';

interface Address {
  params: Promise<{ site: string; system: string }>;
}

const asked = ask(getStatesShape, getStates);
const once = cache((site: string, system: string) => asked({ site, system }));

/** The states of the system by its address, asked for once a request. */
async function askStates({ params }: Address) {
  const { site, system } = await params;
  return await once(decodeURIComponent(site), decodeURIComponent(system));
}

export async function generateMetadata(address: Address): Promise<Metadata> {
  const answer = await askStates(address);
  return { title: answer.ok ? `States of ${answer.value.system.name}` : 'No such system' };
}

export default async function SystemStatesPage(address: Address) {
  const page = answered(await askStates(address));
  const { units } = await chosenView();
  const actions = {
    begin: beginStateAction,
    putOff: putOffStateAction,
    end: endStateAction,
    time: timeStateAction,
    endTimed: endTimedAction,
    authorise: page.mayAuthorise ? authoriseStateAction : null,
  };
  return <SystemStatesBody page={page} units={units} actions={actions} />;
}
