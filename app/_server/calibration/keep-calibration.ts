import 'server-only';
import type { z } from 'zod';
import type { Result } from '#core/result';
import { keepCalibrationRequest } from '#shape/calibration/calibration-place';
import { type ChangeKept, keepChange } from '../describe/keep-change';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { takeOver } from './take-over';

export const keepCalibrationShape = keepCalibrationRequest;

/** Takes over what was found into the description: with its entry in the record, and new reviews asked for. */
export async function keepCalibration(
  who: Who,
  asked: z.output<typeof keepCalibrationShape>,
): Promise<Result<ChangeKept, Refusal>> {
  const edit = await takeOver(who, asked);
  return edit.ok ? await keepChange(who, { ...edit.value, basedOn: asked.basedOn }) : edit;
}
