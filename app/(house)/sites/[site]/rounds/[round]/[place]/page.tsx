import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { Custom } from '#core/units/shown';
import { ask } from '#server/gate/ask';
import { getStates, getStatesShape } from '#server/states/get-states';
import { PlaceBody } from '#ui/rounds/place-body';
import { StatesHere } from '#ui/states/states-here';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { callForHelpAction } from '../../../alarms/actions';
import { authoriseStateAction, beginStateAction, endStateAction, putOffStateAction } from '../../../states/actions';
import { addPhotoAction, enterAction, enterRestAction } from '../../actions';
import { askRound, type RoundParams } from '../ask-round';

interface Address {
  params: Promise<RoundParams & { place: string }>;
}

const askStates = ask(getStatesShape, getStates);

async function askPlace({ params }: Address) {
  const { place: number, ...address } = await params;
  const answer = await askRound(address);
  const place = answer.ok ? answer.value.places.find((one) => String(one.number) === number) : undefined;
  return { answer, place };
}

export async function generateMetadata(address: Address): Promise<Metadata> {
  const { place } = await askPlace(address);
  return { title: place?.name ?? 'No such place' };
}

export default async function PlacePage(address: Address) {
  const { answer, place } = await askPlace(address);
  const page = answered(answer);
  if (!place) notFound();
  const { units } = await chosenView();
  return (
    <PlaceBody
      key={units}
      page={page}
      place={place}
      units={units}
      enter={enterAction}
      rest={enterRestAction}
      addPhoto={addPhotoAction}
      call={callForHelpAction}
      states={await statesOf(address, place.system?.key, units)}
    />
  );
}

/** The states of the system whose checks are done there. */
async function statesOf({ params }: Address, system: string | undefined, units: Custom) {
  const { site } = await params;
  const answer = system === undefined ? null : await askStates({ site: decodeURIComponent(site), system });
  if (!(answer?.ok && answer.value.maySet)) return null;
  const actions = {
    begin: beginStateAction,
    putOff: putOffStateAction,
    end: endStateAction,
    authorise: answer.value.mayAuthorise ? authoriseStateAction : null,
  };
  return <StatesHere page={answer.value} units={units} actions={actions} />;
}
