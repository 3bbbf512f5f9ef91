import { unionisedShareFreeLaw, unionisedShareNbsLaw, unionisedShareTotalLaw } from '../water/unionised-ammonia';
import { type AlmanacTable, BEYOND, degrees, grid, steps, temperatures, figure, written } from './table';

const FRESH = [6.5, 7, 7.5, 8, 8.2, 8.5, 9];
const SEA = [7.6, 7.8, 8, 8.1, 8.2, 8.3, 8.5];
const pH = (value: number) => value.toFixed(1);

const WATERS = [
  { id: 'fresh', said: 'fresh water', law: unionisedShareNbsLaw, salinity: 0, scale: '' },
  {
    id: 'sea-nbs',
    said: 'sea water of 35',
    law: unionisedShareNbsLaw,
    salinity: 35,
    scale: ' of a meter calibrated in buffers of 4, 7 and 10 (NBS)',
  },
  { id: 'sea-total', said: 'sea water of 35', law: unionisedShareTotalLaw, salinity: 35, scale: ' on the total scale' },
  { id: 'sea-free', said: 'sea water of 35', law: unionisedShareFreeLaw, salinity: 35, scale: ' on the free scale' },
] as const;

const LEAVES_OUT =
  'The electrode: 0.05 of pH is an eighth more or less. As nitrogen and as ammonia differ by 1.216: look which a test means.';

/** The part of ammonia that poisons. */
export const AMMONIA_SHARE: AlmanacTable = {
  id: 'ammonia-share',
  title: 'Un-ionised part of ammonia',
  use: 'To see how much of a total ammonia reading is the part that poisons.',
  leavesOut: LEAVES_OUT,
  caution:
    'In salt water the scale of pH decides: a reading in the usual buffers, taken for the total scale, overstates it by a third.',
  laws: [
    'unionised-share-nbs',
    'unionised-share-total',
    'unionised-share-free',
    'ammonia-pk-fresh',
    'ammonia-pk-total',
    'ammonia-pk-free',
  ],
  sheets: (custom) =>
    WATERS.map(({ id, said, law, salinity, scale }) =>
      grid(
        {
          id,
          caption: `Percent of total ammonia in ${said}, by temperature (down) and pH (across)${scale}`,
          corner: degrees(custom),
        },
        temperatures(custom, 4, 32),
        steps(salinity === 0 ? FRESH : SEA, pH),
        (t, at) => figure(law, 2, 100, at, t, salinity),
      ),
    ),
};

/** mg/L of nitrogen. */
const LIMIT = 0.02;

/** How much ammonia a test may show. */
export const AMMONIA_ALLOWED: AlmanacTable = {
  id: 'ammonia-allowed',
  title: 'Total ammonia that keeps the un-ionised part at 0.02 mg/L of nitrogen',
  use: 'To read off, from pH and temperature, the total ammonia reading at which to act.',
  leavesOut: `${LEAVES_OUT} The 0.02 itself is common practice, no source; a state extension sheet says that 0.05 may harm and that fish die near 2.`,
  laws: ['unionised-share-nbs'],
  sheets: (custom) =>
    WATERS.filter(({ law }) => law === unionisedShareNbsLaw).map(({ id, said, law, salinity, scale }) =>
      grid(
        {
          id,
          caption: `mg/L of total ammonia nitrogen in ${said}, by temperature (down) and pH (across)${scale}`,
          corner: degrees(custom),
        },
        temperatures(custom, 4, 32),
        steps(salinity === 0 ? FRESH : SEA, pH),
        (t, at) => (law.inRange(at, t, salinity) ? allowed(LIMIT / law.compute(at, t, salinity)) : BEYOND),
      ),
    ),
};

/** Two figures that count: more would say more than a test does. */
function allowed(total: number): string {
  if (total >= 10) return written(total, 0);
  return written(total, total >= 1 ? 1 : 2);
}
