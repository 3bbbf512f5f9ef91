'use server';

import { keepCalibration, keepCalibrationShape } from '#server/calibration/keep-calibration';
import {
  previewCalibration,
  previewCalibrationShape,
  reviewCalibration,
} from '#server/calibration/preview-calibration';
import { act } from '#server/gate/act';

export const previewCalibrationAction = act(previewCalibrationShape, previewCalibration);

export const reviewCalibrationAction = act(previewCalibrationShape, reviewCalibration);

export const keepCalibrationAction = act(keepCalibrationShape, keepCalibration);
