import { freeAboveTotalLaw, nbsAboveTotalLaw } from '../water/ph-scales';
import { type AlmanacTable, degrees, figure, grid, steps, temperatures } from './table';

const SALINITIES = [5, 10, 20, 25, 30, 35, 40];

/** How far the scales of pH lie from one another. */
export const PH_SCALE_TABLE: AlmanacTable = {
  id: 'ph-scales',
  title: 'Scales of pH in salt water',
  use: 'To bring a reading to the total scale, which sea-water chemistry and its tables use: take this off it.',
  leavesOut:
    'The electrode, a further 0.02 to 0.05 in salt water (from memory). Below salinity 20 nothing was found published for the usual buffers: there the step goes down to nothing in a straight line.',
  laws: ['ph-nbs-above-total', 'ph-free-above-total', 'sulphate-pk', 'fluoride-pk'],
  sheets: (custom) => [
    grid(
      {
        id: 'nbs',
        caption:
          'How far a meter calibrated in buffers of 4, 7 and 10 (NBS) reads above the total scale, by temperature (down) and salinity (across)',
        corner: degrees(custom),
      },
      temperatures(custom, 4, 32),
      steps(SALINITIES),
      (t, s) => figure(nbsAboveTotalLaw, 3, 1, t, s),
    ),
    grid(
      {
        id: 'free',
        caption: 'How far the free scale lies above the total scale, by temperature (down) and salinity (across)',
        corner: degrees(custom),
      },
      temperatures(custom, 4, 32),
      steps(SALINITIES),
      (t, s) => figure(freeAboveTotalLaw, 3, 1, t, s),
    ),
  ],
};
