import 'server-only';
import type { Result } from '#core/result';
import { type CalibrationRequest, calibrationRequest } from '#shape/calibration/calibration-place';
import type { ReviewNews } from '../describe/change-reviews';
import { type ChangePreview, previewChange, reviewChange } from '../describe/preview-change';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { takeOver } from './take-over';

export const previewCalibrationShape = calibrationRequest;

/** What it would change in the description to take over what was found. Nothing is stored. */
export async function previewCalibration(who: Who, asked: CalibrationRequest): Promise<Result<ChangePreview, Refusal>> {
  const edit = await takeOver(who, asked);
  return edit.ok ? await previewChange(who, edit.value) : edit;
}

/** What it would do to the reviews, told as it becomes known. */
export async function reviewCalibration(
  who: Who,
  asked: CalibrationRequest,
): Promise<Result<AsyncIterable<ReviewNews>, Refusal>> {
  const edit = await takeOver(who, asked);
  return edit.ok ? await reviewChange(who, edit.value) : edit;
}
