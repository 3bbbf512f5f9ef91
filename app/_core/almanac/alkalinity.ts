import {
  alkalinityFromDegrees,
  alkalinityPerKilogramLaw,
  CALCIUM_CARBONATE_PER_CHARGE,
} from '../water/alkalinity-units';
import { type AlmanacTable, atDegrees, figure, listed, steps, written } from './table';

/** One alkalinity in its units. */
export const ALKALINITY: AlmanacTable = {
  id: 'alkalinity',
  title: 'Units of alkalinity',
  use: 'To read one alkalinity in degrees, mmol/L, mg/L of calcium carbonate and µmol/kg.',
  leavesOut: 'What carries it. A kilogram of sea water is not a litre: 2439 µmol/kg are 2496 µmol/L.',
  laws: ['alkalinity-from-degrees', 'alkalinity-from-calcium-carbonate', 'alkalinity-per-kilogram'],
  sheets: (custom) => [
    listed(
      {
        id: 'units',
        caption: `The same alkalinity; µmol/kg in sea water of 35 at ${atDegrees(custom, 25)}`,
        corner: '°dKH',
        columns: ['mmol/L (meq/L)', 'mg/L CaCO₃ (ppm)', 'µmol/kg'],
      },
      steps([1, 2, 3, 4, 5, 6, 7, 7.5, 8, 8.5, 9, 9.5, 10, 11, 12, 15, 20]),
      (dkh) => {
        const alkalinity = alkalinityFromDegrees(dkh);
        return [
          written(alkalinity, 2),
          written(alkalinity * CALCIUM_CARBONATE_PER_CHARGE, 0),
          figure(alkalinityPerKilogramLaw, 0, 1, alkalinity, 25, 35),
        ];
      },
    ),
  ],
};
