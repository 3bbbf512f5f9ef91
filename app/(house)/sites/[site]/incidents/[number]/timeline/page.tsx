import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getTimeline, getTimelineShape } from '#server/incidents/get-timeline';
import { TimelineBody } from '#ui/incidents/timeline-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { investigateAction } from '../../actions';
import { type IncidentAddress, placeIn } from '../incident-address';

const askTimeline = ask(getTimelineShape, getTimeline);

export const metadata: Metadata = { title: 'Timeline of an incident' };

interface Address {
  params: Promise<IncidentAddress>;
  searchParams: Promise<{ hours?: string; show?: string | string[] }>;
}

export default async function TimelinePage({ params, searchParams }: Address) {
  const { hours, show = [] } = await searchParams;
  const page = answered(await askTimeline({ ...placeIn(await params), hours }));
  const { units } = await chosenView();
  return <TimelineBody page={page} topics={[show].flat()} units={units} investigate={investigateAction} />;
}
