import type { StartAnswers } from './answers';

/** One answer that does not go with another. */
export interface AnswerFault {
  /** Names from the top, joined by dots. */
  path: string;
  message: string;
}

/** Answers that contradict each other, though each is well formed by itself; empty when all go together. */
export function checkAnswers({ heat, watch, animals }: StartAnswers): AnswerFault[] {
  const faults: AnswerFault[] = [];
  const wrong = (path: string, message: string) => faults.push({ path, message });
  if (heat && !heat.heaters && !heat.chiller) wrong('heat', 'must have heaters or a chiller; or take it out');
  const cutOut = heat?.heaters?.cutOut;
  if (heat && cutOut && cutOut.aboveC <= heat.keptAtC)
    wrong('heat.heaters.cutOut.aboveC', 'must lie above the temperature that is kept');
  if (watch && watch.aboveC === undefined && watch.belowC === undefined)
    wrong('watch', 'must call above a temperature, below one, or both');
  if (watch?.aboveC !== undefined && watch.belowC !== undefined && watch.aboveC <= watch.belowC)
    wrong('watch.aboveC', 'must lie above the lower limit');
  if (watch?.probe === 'regulating' && heat?.by !== 'controller')
    wrong('watch.probe', 'must be one of its own: only the probe of a controller can call');
  for (const [at, { group }] of animals.entries())
    if (animals.findIndex((one) => one.group === group) < at)
      wrong(`animals.${at}.group`, 'stands twice: give the number of both together');
  return faults;
}
