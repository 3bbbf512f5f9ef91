import { toMetres } from '../units/length';
import { density } from '../water/density';
import { depthCompensationLaw, gasPercentLaw } from '../water/gas-pressure';
import { type AlmanacTable, figure, grid, listed, steps, stepsIn } from './table';

/** Too much gas in the water. */
export const GAS_PRESSURE: AlmanacTable = {
  id: 'gas-pressure',
  title: 'Total gas pressure, and what depth holds down',
  use: 'To judge a saturometer’s reading, and whether the depth of a tank helps.',
  leavesOut:
    'Which gas it is. Look for air on a pump’s suction side, warmed make-up water, and a venturi that plunges deep.',
  laws: ['gas-percent', 'depth-compensation'],
  sheets: (custom) => [
    grid(
      {
        id: 'percent',
        caption: 'Percent of the air’s pressure, by excess (down, mmHg) and barometer (across, mmHg)',
        corner: 'mmHg',
      },
      steps([5, 10, 15, 22, 30, 50, 76, 114]),
      steps([620, 660, 700, 730, 760, 780]),
      (excess, barometric) => figure(gasPercentLaw, 1, 1, excess, barometric),
    ),
    listed(
      {
        id: 'depth',
        caption: `Excess that is held down at a depth, mmHg, by depth (${custom === 'us' ? 'ft' : 'm'})`,
        corner: custom === 'us' ? 'ft' : 'm',
        columns: ['fresh water', 'sea water of 35'],
      },
      stepsIn(custom, [0.2, 0.3, 0.5, 1, 1.5, 2, 3, 5], [0.5, 1, 2, 3, 5, 8, 12], (ft) => toMetres(ft, 'ft')),
      (depth) => [0, 35].map((s) => figure(depthCompensationLaw, 0, 1, depth, density(25, s))),
    ),
  ],
};
