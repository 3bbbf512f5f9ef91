import { hydrometerSalinityLaw } from '../water/specific-gravity';
import { type AlmanacTable, atDegrees, degrees, figure, grid, steps, temperatures } from './table';

const READINGS = [1.018, 1.02, 1.022, 1.024, 1.025, 1.026, 1.027];

/** A glass hydrometer in water that is not as warm as it was made for. */
export const HYDROMETER: AlmanacTable = {
  id: 'hydrometer',
  title: 'Salinity by a glass hydrometer',
  use: 'To put right a reading taken in water of another temperature than stands on the hydrometer’s paper.',
  leavesOut:
    'Swing-arm ones, bubbles, salt on the stem. ± 0.5 at best: a table in circulation for 60 °F lies 0.3 to 0.35 below the first one here.',
  laws: ['hydrometer-salinity'],
  sheets: (custom) =>
    [140 / 9, 25].map((made) =>
      grid(
        {
          id: made === 25 ? 'for-25' : 'for-60',
          caption: `Salinity by reading (across) and temperature of the water (down), for one made for ${made === 25 ? atDegrees(custom, 25) : '60 °F (15.6 °C)'}`,
          corner: degrees(custom),
        },
        temperatures(custom, 10, 32),
        steps(READINGS, (value) => value.toFixed(3)),
        (t, reading) => figure(hydrometerSalinityLaw, 1, 1, reading, t, made),
      ),
    ),
};
