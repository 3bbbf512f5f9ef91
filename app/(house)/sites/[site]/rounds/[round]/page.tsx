import type { Metadata } from 'next';
import { RoundBody } from '#ui/rounds/round-body';
import { answered } from '../../../../view/answered';
import { chosenView } from '../../../../view/chosen-view';
import { lookAgainAction, signRoundAction, takeBackAction } from '../actions';
import { askRound, type RoundParams } from './ask-round';

interface Address {
  params: Promise<RoundParams>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const answer = await askRound(await params);
  return { title: answer.ok ? answer.value.round.name : 'No such round' };
}

export default async function RoundPage({ params }: Address) {
  const page = answered(await askRound(await params));
  const { units } = await chosenView();
  return (
    <RoundBody page={page} units={units} sign={signRoundAction} look={lookAgainAction} takeBack={takeBackAction} />
  );
}
