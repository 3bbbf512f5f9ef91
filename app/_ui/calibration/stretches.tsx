import { readingSymbol, toCustom } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import { inUnits, symbolOf } from '../units/figures';
import { StretchPlot } from './stretch-plot';
import type { FitView, StretchView } from './view';
import { amountSaid, FITS } from './words';
import style from './calibration.module.css';

interface StretchesProps {
  fit: FitView;
  units: Custom;
}

/** The stretches a figure comes from, each with its readings and its curve; any of them can be left out. */
export function Stretches({ fit, units }: StretchesProps) {
  return fit.is === 'evaporation' ? <Uses fit={fit} units={units} /> : <Courses fit={fit} units={units} />;
}

function Courses({ fit, units }: StretchesProps) {
  const quantity = FITS[fit.is].read === 'oxygen' ? 'oxygen' : 'temperature';
  return (
    <ul className={style.stretches}>
      {fit.stretches.map((stretch) => (
        <li key={stretch.key} className={stretch.isLeftOut ? style.isOut : undefined}>
          <LeaveOut stretch={stretch} />
          <span className={style.says}>{saidBy(fit, stretch, units)}</span>
          <StretchPlot
            title={`Readings and curve, ${stretch.fromThere} to ${stretch.toThere}`}
            points={stretch.points}
            shown={(value) => toCustom(quantity, units, value)}
            unit={readingSymbol(quantity, units)}
            from={stretch.fromThere.slice(11)}
            to={stretch.toThere.slice(11)}
          />
        </li>
      ))}
    </ul>
  );
}

function saidBy({ is, found }: FitView, { what, value, error, sd, points }: StretchView, units: Custom): string {
  const unit = found?.unit ?? (is === 'heat-loss' ? 'W/K' : is === 'oxygen-use' ? 'mg/h' : 'L/h');
  const says =
    value === null
      ? 'says nothing by itself'
      : `${amountSaid(units, unit, value)}, standard error ${amountSaid(units, unit, error ?? 0)}`;
  const scatter =
    sd === null
      ? ''
      : `; readings lie ${Number(sd.toPrecision(2))}\u00a0${FITS[is].read === 'oxygen' ? 'mg/L' : 'K'} about the curve`;
  return `${what}; ${points.length} readings; ${says}${scatter}.`;
}

/** Uses stand in one drawing: each is one number beside what it should have been. */
function Uses({ fit: { stretches }, units }: StretchesProps) {
  const kept = stretches.filter(({ isLeftOut }) => !isLeftOut);
  const [first, last] = [kept[0], kept.at(-1)];
  return (
    <>
      {first && last && first !== last ? (
        <StretchPlot
          title={`What was used and what the curve says, ${first.toThere} to ${last.toThere}`}
          points={kept.flatMap(({ points }) => points)}
          shown={(value) => inUnits(units, 'volume', value)}
          unit={symbolOf(units, 'volume')}
          from={first.toThere.slice(0, 10)}
          to={last.toThere.slice(0, 10)}
        />
      ) : null}
      <ul className={style.stretches}>
        {stretches.map((stretch) => (
          <li key={stretch.key} className={stretch.isLeftOut ? style.isOut : undefined}>
            <LeaveOut stretch={stretch} />
            {stretch.points.map(({ atMs, value, fitted }) => (
              <span key={atMs} className={style.says}>
                {inUnits(units, 'volume', value).toFixed(1)} used, {inUnits(units, 'volume', fitted).toFixed(1)} by the
                curve ({symbolOf(units, 'volume')}).
              </span>
            ))}
          </li>
        ))}
      </ul>
    </>
  );
}

function LeaveOut({ stretch: { key, fromThere, toThere, isLeftOut } }: { stretch: StretchView }) {
  return (
    <label className={style.choose}>
      <input type="checkbox" name="out" value={key} defaultChecked={isLeftOut} />
      Leave out {fromThere} to {toThere.slice(0, 10) === fromThere.slice(0, 10) ? toThere.slice(11) : toThere}
    </label>
  );
}
