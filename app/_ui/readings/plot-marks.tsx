import type { ScaleLinear } from 'd3-scale';
import type { Bucket } from '#core/readings/spans';
import { qualityPath } from './quality';
import type { PointView, SensorReadingsView } from './sensor-view';
import style from './plot.module.css';

interface MarksProps {
  points: PointView[];
  raised: SensorReadingsView['raised'];
  x: ScaleLinear<number, number>;
  at: (value: number) => number;
  /** px of the chart's upper and lower edge. */
  range: [number, number];
}

/** Readings that are not good or were taken by hand, each by its shape, and alarms that were raised, on the axis. */
export function PlotMarks({ points, raised, x, at, range: [top, bottom] }: MarksProps) {
  const inside = (value: number) => Math.min(bottom, Math.max(top, at(value)));
  return (
    <g>
      {points.map(({ atMs, origin, quality, value }) => (
        <g key={`${atMs} ${origin}`} transform={`translate(${x(atMs)} ${inside(value)})`}>
          {origin === 'hand' ? <circle className={style.hand} r={4} /> : null}
          {quality === 'good' ? null : <path className={style.doubt} data-quality={quality} d={qualityPath(quality)} />}
        </g>
      ))}
      {raised.map(({ id, atMs }) => (
        <path key={id} className={style.raised} d={`M${x(atMs)} ${bottom - 1}l-5 -9h10z`} />
      ))}
    </g>
  );
}

interface LateProps extends Pick<MarksProps, 'x'> {
  buckets: Bucket[];
  /** px of the chart's lower edge. */
  bottom: number;
}

/** When what is drawn came late, along the axis: in its time nobody knew it. */
export function LateMarks({ buckets, x, bottom }: LateProps) {
  return (
    <g>
      {buckets
        .filter(({ late }) => late > 0)
        .map(({ fromMs, toMs }) => (
          <path
            key={fromMs}
            className={style.late}
            d={`M${x(fromMs)} ${bottom - 4}H${Math.max(x(toMs), x(fromMs) + 2)}`}
          />
        ))}
    </g>
  );
}

/** What the shapes of a chart mean. */
export function PlotKey({ isAnyLate, isAllCounted }: { isAnyLate: boolean; isAllCounted: boolean }) {
  return (
    <ul className={style.key}>
      <li>
        <Sample>
          <path className={style.band} d="M-12-5H12V5H-12Z" />
          <path className={style.mean} d="M-12 0H12" />
        </Sample>
        average, and lowest to highest
      </li>
      <li>
        <Sample>
          <path className={style.doubt} data-quality="suspect" d={qualityPath('suspect')} />
        </Sample>
        suspect
      </li>
      <li>
        <Sample>
          <path className={style.doubt} data-quality="bad" d={qualityPath('bad')} />
        </Sample>
        bad; at the edge when it lies beyond
      </li>
      <li>
        <Sample>
          <circle className={style.hand} r={4} />
        </Sample>
        taken by hand
      </li>
      {isAnyLate || !isAllCounted ? (
        <li>
          <Sample>
            <path className={style.late} d="M-12 0H12" />
          </Sample>
          came late{isAllCounted ? '' : ', where that was counted'}
        </li>
      ) : null}
      <li>
        <Sample>
          <path className={style.raised} d="M0 5l-5-9h10z" />
        </Sample>
        an alarm was raised
      </li>
      <BandKey />
    </ul>
  );
}

/** The same of bands. */
function BandKey() {
  return (
    <>
      <li>
        <Sample>
          <path className={style.beyond} d="M-12-6H12V0H-12Z" />
          <path className={style.limit} d="M-12 0H12" />
        </Sample>
        limit of an alarm, and what lies beyond
      </li>
      <li>
        <Sample>
          <path className={style.state} d="M-8-6H8V6H-8Z" />
          <path className={style.stateEdge} d="M-8-6V6M8-6V6" />
        </Sample>
        a state in force
      </li>
    </>
  );
}

function Sample({ children }: { children: React.ReactNode }) {
  return (
    <svg width="26" height="14" viewBox="-13 -7 26 14" aria-hidden="true">
      {children}
    </svg>
  );
}
