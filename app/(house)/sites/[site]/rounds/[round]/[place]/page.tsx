import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PlaceBody } from '#ui/rounds/place-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { callForHelpAction } from '../../../alarms/actions';
import { enterAction, enterRestAction } from '../../actions';
import { askRound, type RoundParams } from '../ask-round';

interface Address {
  params: Promise<RoundParams & { place: string }>;
}

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
      call={callForHelpAction}
    />
  );
}
