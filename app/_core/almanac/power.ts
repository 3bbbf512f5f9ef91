import { continuousLoadLaw } from '../water/continuous-load';
import { gfciTimeLaw, rcdTimeLaw } from '../water/earth-fault';
import { upsRunTimeLaw } from '../water/ups-run-time';
import { type AlmanacTable, figure, grid, listed, steps } from './table';

/** How long batteries last. */
export const BATTERIES: AlmanacTable = {
  id: 'batteries',
  title: 'Minutes that a UPS carries a load',
  use: 'To see whether a UPS outlasts the way in of whoever comes.',
  leavesOut:
    'Runs of less than an hour give about 30 % less (from memory), cold less still; starting a pump takes far more than its watts.',
  caution: 'A UPS whose battery was never tested under load is not a safeguard.',
  laws: ['ups-run-time'],
  sheets: () => [
    grid(
      {
        id: 'minutes',
        caption:
          'Minutes, by load (down, W) and batteries of 12 V (across, Ah together): half of the charge used, inverter 0.9, batteries at three quarters of new',
        corner: 'W',
      },
      steps([20, 50, 100, 150, 200, 300, 500, 1000]),
      steps([7, 9, 18, 36, 72, 100, 200]),
      (load, ampHours) => figure(upsRunTimeLaw, 0, 1 / 60, 12, ampHours, 1, 0.5, 0.9, 0.75, load),
    ),
  ],
};

/** What circuits and earth-fault devices do. */
export const CIRCUITS: AlmanacTable = {
  id: 'circuits',
  title: 'Circuits and earth-fault devices',
  use: 'To see what a circuit may carry all day, and how fast a device trips.',
  leavesOut: 'Current from line to neutral, which no such device sees. Times of the IEC kind are from memory.',
  caution:
    'For a first look only: a qualified electrician and the local code decide. Mains and salt water kill; press the test button as the maker says. All life support behind one earth-fault device stops together.',
  laws: ['continuous-load', 'gfci-time', 'rcd-time'],
  sheets: () => [
    listed(
      {
        id: 'trips',
        caption: 'Seconds within which a device must trip, by current to earth (down, mA)',
        corner: 'mA',
        columns: ['Class A GFCI', 'RCD of 30 mA', 'RCD of 10 mA'],
      },
      steps([4, 6, 10, 15, 20, 30, 60, 100, 150, 264, 500]),
      (current) => [
        figure(gfciTimeLaw, 3, 1, current),
        figure(rcdTimeLaw, 2, 1, current, 30),
        figure(rcdTimeLaw, 2, 1, current, 10),
      ],
    ),
    grid(
      {
        id: 'load',
        caption: 'Watts that run three hours or more, 80 % of the breaker (down, A), by voltage (across)',
        corner: 'A',
      },
      steps([6, 10, 13, 15, 16, 20, 32]),
      steps([100, 120, 208, 230, 240]),
      (breaker, volts) => figure(continuousLoadLaw, 0, 1, breaker, volts),
    ),
  ],
};
