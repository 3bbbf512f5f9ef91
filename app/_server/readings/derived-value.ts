import 'server-only';
import type { InputsAt } from '#data/readings/derived-inputs';
import type { Revised } from '#data/readings/rows';
import { isOther } from '#data/readings/store-derived';

/**
 * The value of a derived series that is to stand at an instant. What no longer follows is not removed: it stands as bad.
 *
 * @param at         the instant, and what stands there
 * @param value      null where nothing follows
 * @param doubtful   whether it follows from something suspect
 * @returns          none where what stands is the same
 */
export function derivedValue(
  sensorId: string,
  { atMs, standing }: Pick<InputsAt, 'atMs' | 'standing'>,
  value: number | null,
  doubtful: boolean,
): Revised[] {
  if (value === null && !standing) return [];
  const judged = judgedOf(standing, value, doubtful);
  if (standing && !isOther(standing, judged)) return [];
  const revision = standing ? standing.revision + 1 : 0;
  return [{ sensorId, at: new Date(atMs), origin: 'device', ...judged, revision }];
}

function judgedOf(
  standing: InputsAt['standing'],
  value: number | null,
  doubtful: boolean,
): Pick<Revised, 'value' | 'quality' | 'reason'> {
  if (value === null) return { value: standing?.value ?? 0, quality: 'bad', reason: 'input-gone' };
  return doubtful ? { value, quality: 'suspect', reason: 'input-doubtful' } : { value, quality: 'good' };
}
