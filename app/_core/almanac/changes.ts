import { concentrationByEvaporationLaw } from '../water/concentration-by-evaporation';
import { dilutionOverflowingLaw } from '../water/dilution-overflowing';
import { dilutionRisingLaw } from '../water/dilution-rising';
import { steadyExchangeLaw, waterChangesLaw } from '../water/water-changes';
import { type AlmanacTable, figure, grid, listed, steps } from './table';

/** What dilution leaves. */
export const WATER_CHANGES: AlmanacTable = {
  id: 'water-changes',
  title: 'What water changes leave',
  use: 'To plan how many changes bring something down, and what a steady trickle does in its time.',
  leavesOut: 'What animals go on giving off between, and what sits in sand and filters. New water is without it here.',
  caution: 'A large change can itself do harm: match temperature, salinity, pH and chlorine first.',
  laws: ['water-changes', 'steady-exchange'],
  sheets: () => [
    grid(
      {
        id: 'changes',
        caption: 'Percent that is left, by part changed each time (down, %) and number of changes (across)',
        corner: '%',
      },
      steps([5, 10, 15, 20, 25, 30, 40, 50, 75]),
      steps([1, 2, 3, 4, 5, 7, 10]),
      (part, count) => figure(waterChangesLaw, 1, 1, 100, 0, part / 100, count),
    ),
    grid(
      {
        id: 'exchange',
        caption: 'Percent that is left under a steady exchange, by volumes a day (down) and days (across)',
        corner: 'a day',
      },
      steps([0.05, 0.1, 0.2, 0.5, 1, 2]),
      steps([1, 2, 3, 5, 7, 14, 30]),
      (volumes, days) => figure(steadyExchangeLaw, 1, 1, 100, 0, 0, volumes / 24, 1, 24 * days),
    ),
  ],
};

/** What top-off and evaporation do to salinity. */
export const TOP_OFF: AlmanacTable = {
  id: 'top-off',
  title: 'Salinity when top-off sticks open, or is missing',
  use: 'To see how much fresh water, or how much evaporation, takes salinity where animals are harmed.',
  leavesOut: 'Stock that is hurt by the speed of it. Tanks that do not mix with the sump change less, the sump more.',
  laws: ['dilution-overflowing', 'dilution-rising', 'concentration-by-evaporation'],
  sheets: () => [
    listed(
      {
        id: 'salinity',
        caption: 'Salinity of a system of 35, by water run in or lost as a part of its volume (down, %)',
        corner: '%',
        columns: ['fresh water in, level rises', 'fresh water in, runs over', 'evaporated'],
      },
      steps([1, 2, 3, 4, 5, 8, 10, 15, 20, 30]),
      (percent) => [
        figure(dilutionRisingLaw, 2, 1, 35, 0, 1, percent / 100),
        figure(dilutionOverflowingLaw, 2, 1, 35, 0, 1, percent / 100),
        figure(concentrationByEvaporationLaw, 2, 1, 35, 1, percent / 100),
      ],
    ),
  ],
};
