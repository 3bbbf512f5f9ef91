import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getReport, getReportShape } from '#server/incidents/get-report';
import { ReportBody } from '#ui/incidents/report-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import { type IncidentAddress, placeIn } from '../incident-address';

const askReport = ask(getReportShape, getReport);

export const metadata: Metadata = { title: 'Report of an incident' };

interface Address {
  params: Promise<IncidentAddress>;
  searchParams: Promise<{ names?: string; hours?: string }>;
}

export default async function ReportPage({ params, searchParams }: Address) {
  const { names, hours } = await searchParams;
  const page = answered(await askReport({ ...placeIn(await params), names, hours }));
  const { units } = await chosenView();
  return <ReportBody page={page} units={units} />;
}
