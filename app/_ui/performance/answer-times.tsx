import type { Answering, HourOfWeek } from '#core/alarms/performance/acknowledged';
import { Ledger } from '../table/ledger';
import { minutesSaid } from './performance-view';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** How soon alarms were acknowledged, by hour of the week. */
export function AnswerTimes({ answering: { all, hours, never, returnedBefore } }: { answering: Answering }) {
  return (
    <>
      <p>
        {all === null
          ? 'None was acknowledged.'
          : `Half within ${minutesSaid(all.medianMin)}, nine of ten within ${minutesSaid(all.highMin)}, of ${all.cases}.`}{' '}
        Not acknowledged: {never}. Back to normal before anybody did: {returnedBefore}.
      </p>
      {hours.length === 0 ? null : (
        <Ledger<HourOfWeek>
          caption="By the hour of the week in which they were raised, hours without any left out"
          columns={[
            {
              id: 'when',
              head: 'When',
              cell: ({ day, hour }) => `${DAYS[day] ?? ''} ${String(hour).padStart(2, '0')}:00`,
            },
            { id: 'cases', head: 'Alarms', figure: true, cell: ({ cases }) => cases },
            { id: 'median', head: 'Half within', figure: true, cell: ({ medianMin }) => minutesSaid(medianMin) },
            { id: 'high', head: 'Nine of ten within', figure: true, cell: ({ highMin }) => minutesSaid(highMin) },
          ]}
          rows={hours}
          keyOf={({ day, hour }) => `${day} ${hour}`}
          narrow
        />
      )}
    </>
  );
}
