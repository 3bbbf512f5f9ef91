import { MomentShape } from '../marks/moment-shape';
import { wallClock } from '../plot/time-ticks';
import type { CaseMoment } from './case-moments';
import { lasting } from '../words/lasting';
import style from './case-log.module.css';

/** The course as a log: time down the left margin, what happens to the right of it. */
export function CaseLog({ moments, onsetHour }: { moments: CaseMoment[]; onsetHour: number }) {
  return (
    <table className={style.log}>
      <caption>
        The course in words, when the fault begins at its worst hour and nobody comes before the rota allows
      </caption>
      <thead>
        <tr>
          <th scope="col">After</th>
          <th scope="col">Clock</th>
          <th scope="col">What happens</th>
        </tr>
      </thead>
      <tbody>
        {moments.map((moment) => (
          <tr key={`${moment.kind}${moment.atS}${moment.says}`} data-moment={moment.kind}>
            <th scope="row">
              {Number.isFinite(moment.atS) ? (moment.atS === 0 ? '0' : lasting(moment.atS)) : 'never'}
            </th>
            <td>{Number.isFinite(moment.atS) ? wallClock(onsetHour, moment.atS) : '–'}</td>
            <td>
              <svg viewBox="0 0 18 18" width="18" height="18" aria-hidden="true">
                <MomentShape kind={moment.kind} x={9} y={9} />
              </svg>
              <span>{moment.says}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
