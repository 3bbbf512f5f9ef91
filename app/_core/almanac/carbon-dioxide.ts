import { alkalinityFromDegrees } from '../water/alkalinity-units';
import { CARBON_DIOXIDE, carbonDioxideSaturation } from '../water/carbon-dioxide-saturation';
import { carbonDioxideChartLaw, freshCarbonDioxideLaw } from '../water/carbonate-fresh';
import { alkalinityAt, emptyConstants } from '../water/carbonate-balance';
import { aragoniteSaturationLaw, fillSeaConstants, seaCarbonDioxideLaw } from '../water/carbonate-sea';
import { nbsAboveTotal } from '../water/ph-scales';
import { type AlmanacTable, atDegrees, figure, grid, steps, written } from './table';

const FRESH_DEGREES = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15];
const SEA_DEGREES = [6, 7, 8, 9, 10, 11, 12];
const pH = (value: number) => value.toFixed(1);
const CAUTION =
  'Carbon dioxide gas gathers low and kills without warning. Nobody works alone where it is stored or dosed; see the local code.';
const SEA_TOTAL = (nbs: number) => nbs - nbsAboveTotal(25, 35);

/** Carbon dioxide of fresh water, by the whole balance and by the chart. */
export const CARBON_DIOXIDE_FRESH: AlmanacTable = {
  id: 'carbon-dioxide-fresh',
  title: 'Carbon dioxide in fresh water',
  use: 'To estimate dissolved carbon dioxide from carbonate hardness and pH.',
  leavesOut:
    'Every other acid and base: peat, humic acids, phosphate, “pH down”. With them in the water, neither table is right.',
  caution: CAUTION,
  laws: [
    'fresh-carbon-dioxide',
    'carbon-dioxide-chart',
    'fresh-ph',
    'fresh-carbon',
    'fresh-pk1',
    'fresh-pk2',
    'fresh-pkw',
    'davies',
    'carbon-dioxide-solubility',
    'fugacity-factor',
    'carbon-dioxide-saturation',
  ],
  sheets: (custom) => [
    grid(
      {
        id: 'whole',
        caption: `mg/L at ${atDegrees(custom, 25)} by the whole balance, by carbonate hardness (down, °dKH) and pH (across)`,
        corner: '°dKH',
      },
      steps(FRESH_DEGREES),
      steps([6, 6.4, 6.6, 6.8, 7, 7.4, 8], pH),
      (dkh, at) => {
        const alkalinity = alkalinityFromDegrees(dkh);
        return figure(freshCarbonDioxideLaw, 1, 1, alkalinity, at, 25, 1.5e-3 * alkalinity);
      },
    ),
    grid(
      {
        id: 'chart',
        caption:
          'mg/L by the chart that is in use, 3 · °dKH · 10^(7 − pH): 8 to 20 % less, and three to four times too much in sea water',
        corner: '°dKH',
      },
      steps(FRESH_DEGREES),
      steps([6, 6.4, 6.6, 6.8, 7, 7.4, 8], pH),
      (dkh, at) => figure(carbonDioxideChartLaw, 1, 1, dkh, at),
    ),
  ],
};

/** Carbon dioxide, pH and aragonite of sea water. */
export const CARBON_DIOXIDE_SEA: AlmanacTable = {
  id: 'carbon-dioxide-sea',
  title: 'Carbon dioxide and pH in sea water',
  use: 'To see whether a low pH comes of the air of the room, of alkalinity, or of too little exchange with the air.',
  leavesOut: 'Phosphate, silicate, ammonia and organic acids; calcium that is not in the sea’s proportion.',
  caution: CAUTION,
  laws: [
    'sea-ph',
    'sea-carbon',
    'sea-carbon-dioxide',
    'aragonite-saturation',
    'sea-pk1',
    'sea-pk2',
    'brackish-pk1',
    'brackish-pk2',
    'boric-pk',
    'sea-pkw',
    'aragonite-pk',
    'calcite-pk',
    'carbon-dioxide-saturation',
  ],
  sheets: (custom) => [
    grid(
      {
        id: 'air',
        caption: `pH by a meter in the usual buffers (NBS) of sea water of 35 at ${atDegrees(custom, 25)} in balance with the air, by alkalinity (down, °dKH) and carbon dioxide in the air (across, ppm)`,
        corner: '°dKH',
      },
      steps(SEA_DEGREES),
      steps([420, 600, 800, 1000, 1500, 2000]),
      (dkh, part) => written(phInAir(alkalinityFromDegrees(dkh), part), 2),
    ),
    grid(
      {
        id: 'by-ph',
        caption: `mg/L of carbon dioxide in sea water of 35 at ${atDegrees(custom, 25)}, by alkalinity (down, °dKH) and pH by a meter in the usual buffers (across)`,
        corner: '°dKH',
      },
      steps(SEA_DEGREES),
      steps([7.6, 7.8, 8, 8.1, 8.2, 8.3, 8.5], pH),
      (dkh, at) => figure(seaCarbonDioxideLaw, 2, 1, alkalinityFromDegrees(dkh), SEA_TOTAL(at), 25, 35),
    ),
    grid(
      {
        id: 'aragonite',
        caption: `Saturation with aragonite at ${atDegrees(custom, 25)} and 35, by alkalinity (down, °dKH) and pH by a meter in the usual buffers (across); below 1 it dissolves`,
        corner: '°dKH',
      },
      steps(SEA_DEGREES),
      steps([7.6, 7.8, 8, 8.1, 8.2, 8.3, 8.5], pH),
      (dkh, at) => figure(aragoniteSaturationLaw, 1, 1, alkalinityFromDegrees(dkh), SEA_TOTAL(at), 25, 35),
    ),
  ],
};

/** NBS pH of sea water of 35 at 25 °C and so much alkalinity (mol/m³), in balance with air of `part` ppm: by halving. */
function phInAir(alkalinity: number, part: number): number {
  const k = fillSeaConstants(emptyConstants(), 25, 35);
  const wanted = carbonDioxideSaturation(25, 35, part, 1) / CARBON_DIOXIDE;
  let low = 6;
  let high = 10;
  for (let i = 0; i < 50; i++) {
    const at = (low + high) / 2;
    const h = 10 ** -at;
    const carbon = (wanted * (h * h + k.k1 * (h + k.k2))) / (h * h);
    if (alkalinityAt(k, carbon, at) > alkalinity) high = at;
    else low = at;
  }
  return (low + high) / 2 + nbsAboveTotal(25, 35);
}
