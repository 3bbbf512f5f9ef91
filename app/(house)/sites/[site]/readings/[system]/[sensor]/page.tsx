import type { Metadata } from 'next';
import { ask } from '#server/gate/ask';
import { getSensorReadings, getSensorReadingsShape } from '#server/readings/get-sensor-readings';
import { SensorBody } from '#ui/readings/sensor-body';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import type { SiteAddress } from '../../../ask-site';

interface Address {
  params: Promise<SiteAddress & { system: string; sensor: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const askSensor = ask(getSensorReadingsShape, getSensorReadings);

export const metadata: Metadata = { title: 'Readings of a sensor' };

export default async function SensorPage({ params, searchParams }: Address) {
  const { site, system, sensor } = await params;
  const place = {
    site: decodeURIComponent(site),
    system: decodeURIComponent(system),
    sensor: decodeURIComponent(sensor),
  };
  const view = answered(await askSensor({ ...(await searchParams), ...place }));
  const { units } = await chosenView();
  return <SensorBody view={view} units={units} />;
}
