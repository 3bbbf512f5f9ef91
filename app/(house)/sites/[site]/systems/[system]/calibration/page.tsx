import type { Metadata } from 'next';
import { getCalibration, getCalibrationShape } from '#server/calibration/get-calibration';
import { ask } from '#server/gate/ask';
import { CalibrationPageBody } from '#ui/calibration/calibration-page';
import { answered } from '../../../../../view/answered';
import { chosenView } from '../../../../../view/chosen-view';
import type { SystemAddress } from '../ask-system';
import { keepCalibrationAction, previewCalibrationAction, reviewCalibrationAction } from './actions';

interface Address {
  params: Promise<SystemAddress>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const askCalibration = ask(getCalibrationShape, getCalibration);

export const metadata: Metadata = { title: 'Calibration from readings' };

export default async function CalibrationPage({ params, searchParams }: Address) {
  const { site, system } = await params;
  const place = { site: decodeURIComponent(site), system: decodeURIComponent(system) };
  const view = answered(await askCalibration({ ...(await searchParams), ...place }));
  const { units } = await chosenView();
  return (
    <CalibrationPageBody
      view={view}
      units={units}
      actions={{
        preview: previewCalibrationAction,
        review: reviewCalibrationAction,
        keep: keepCalibrationAction,
      }}
    />
  );
}
