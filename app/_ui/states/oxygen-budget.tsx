import type { OxygenWithout } from '#core/review/oxygen-without';
import { lastingSaid } from './state-view';
import style from './states.module.css';

/** How long animals have oxygen while a state stops what brings it in. */
export function OxygenBudget({ oxygen }: { oxygen: OxygenWithout | null }) {
  if (oxygen === null) return null;
  const { stopped, isAssumed, tank, leastMgL, fromHour, why } = oxygen;
  return (
    <>
      <h3>The oxygen without it</h3>
      <p>
        Off meanwhile: {stopped.join(', ')}.{isAssumed ? ' No plan says so; it is off for most medicines.' : ''}
      </p>
      {why === null ? (
        <p>
          {oxygen.hours === null ? (
            <>Enough for seven days and longer, at the figures as entered and with nobody coming.</>
          ) : (
            <strong>
              <span aria-hidden="true" className={style.mark}>
                ▲
              </span>{' '}
              Animals in {tank} are past their limit after {hoursSaid(oxygen.hours)}, begun at {fromHour}:00. Bring in
              other air first.
            </strong>
          )}{' '}
          {leastMgL === null ? '' : `Least until then: ${leastMgL.toFixed(1)}\u00a0mg/L in ${tank ?? 'the system'}. `}
          {oxygen.unsure ? <Unsure badHours={oxygen.badHours} /> : null}
          {!oxygen.unsure && oxygen.badHours !== null
            ? `With every figure at its bad end: ${hoursSaid(oxygen.badHours)}.`
            : ''}
        </p>
      ) : (
        <p>
          <strong>Not worked out</strong>: {why}. Measure oxygen before, and all through the first night.
        </p>
      )}
      <p className={style.small}>
        From the model of the review: the stock and volumes that are entered, the plans as written, no photosynthesis,
        no drug that burdens breathing. Oxygen is measured all the same, most of all at night.
      </p>
    </>
  );
}

function Unsure({ badHours }: { badHours: number | null }) {
  return (
    <>
      Unsure: with every figure at its bad end{' '}
      {badHours === null ? 'nothing can be worked out' : `it lasts ${hoursSaid(badHours)}`}.{' '}
    </>
  );
}

function hoursSaid(hours: number): string {
  if (hours < 2) return lastingSaid(Math.max(1, Math.floor(hours * 60)));
  return `${hours < 10 ? Math.floor(hours * 10) / 10 : Math.floor(hours)} hours`;
}
