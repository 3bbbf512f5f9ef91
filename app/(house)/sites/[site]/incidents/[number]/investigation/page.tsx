import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getInvestigation, getInvestigationShape } from '#server/incidents/get-investigation';
import { InvestigationBody } from '#ui/incidents/investigation-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { investigateAction, signIncidentAction, withdrawEntryAction } from '../../actions';
import { type IncidentAddress, placeIn } from '../incident-address';

const askInvestigation = ask(getInvestigationShape, getInvestigation);

export const metadata: Metadata = { title: 'Investigation of an incident' };

export default async function InvestigationPage({ params }: { params: Promise<IncidentAddress> }) {
  const page = answered(await askInvestigation(placeIn(await params)));
  const { units } = await chosenView();
  return (
    <InvestigationBody
      page={page}
      units={units}
      investigate={investigateAction}
      sign={signIncidentAction}
      withdraw={withdrawEntryAction}
    />
  );
}
