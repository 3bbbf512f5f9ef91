import { toCubicMetresPerSecond } from '../units/flow';
import { chloramineNitrogenLaw, ozoneAsChlorineLaw, thiosulphateForLaw } from '../water/oxidants';
import { uvDoseLaw } from '../water/uv-dose';
import limits from './published-limits.json';
import { type AlmanacTable, figure, grid, listed, steps, stepsIn } from './table';
import needs from './uv-needs.json';

/** Published limits, as they were read. */
export const LIMITS: AlmanacTable = {
  id: 'limits',
  title: 'Published limits of what poisons',
  use: 'To set a reading against what was published; the profile of the stock decides, not this table.',
  leavesOut: 'Your species, and what comes together: heat, thin water and poison add up.',
  caution:
    'Any copper where invertebrates, rays or sharks live is an alarm. A redox potential is a trend, not a residual: measure the oxidant itself.',
  laws: [],
  sheets: () => [
    {
      id: 'limits',
      caption: 'In the unit of the source',
      corner: 'Of',
      columns: ['What', 'Value', 'Source'],
      rows: limits.map(({ of, what, value, source }) => ({ head: of, cells: [what, value, source] })),
      words: true,
    },
  ],
};

/** What takes chlorine out, and what ozone counts as. */
export const DOSING: AlmanacTable = {
  id: 'oxidants',
  title: 'Chlorine, chloramine and ozone',
  use: 'To see how much thiosulphate mains water needs, what ammonia chloramine leaves, and what ozone counts as.',
  leavesOut:
    'Products with less in them than the pure crystals: they need more. How fast oxidants decay is not reckoned.',
  caution:
    'Dose for the volume that is really there, less rock and sand; test before animals meet the water. Ozone and chlorine are dangerous to breathe: nobody works alone with them; see the local code.',
  laws: ['thiosulphate-for', 'chloramine-nitrogen', 'ozone-as-chlorine'],
  sheets: () => [
    listed(
      {
        id: 'mains',
        caption:
          'For each cubic metre (264 US gal) of mains water, by its chlorine, free and bound (down, mg/L): g of thiosulphate crystals, and mg/L of ammonia nitrogen if all of it was chloramine',
        corner: 'mg/L',
        columns: ['Thiosulphate, g', 'Ammonia N, mg/L'],
      },
      steps([0.1, 0.2, 0.5, 1, 1.5, 2, 3, 4]),
      (chlorine) => [figure(thiosulphateForLaw, 1, 1, chlorine), figure(chloramineNitrogenLaw, 2, 1, chlorine)],
    ),
    listed(
      {
        id: 'ozone',
        caption:
          'Total oxidant, as chlorine, that ozone makes in sea water if none decays: mg/L for mg of ozone in a litre',
        corner: 'mg/L',
        columns: ['as Cl₂, mg/L'],
      },
      steps([0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1]),
      (ozone) => [figure(ozoneAsChlorineLaw, 3, 1, ozone)],
    ),
  ],
};

/** What an ultraviolet unit gives, and what is needed. */
export const ULTRAVIOLET: AlmanacTable = {
  id: 'ultraviolet',
  title: 'Dose of an ultraviolet unit',
  use: 'To see what a flow leaves of the dose, and what was published as needed.',
  leavesOut:
    'A fouled sleeve and an old lamp, which can take half each, and short cuts. Protozoa need more than stands here.',
  caution: 'Ultraviolet light blinds and burns: never look into a lit unit.',
  laws: ['uv-dose'],
  sheets: (custom) => {
    const us = custom === 'us';
    return [
      grid(
        {
          id: 'dose',
          caption: `mJ/cm² in a unit of 1.5 L, 20 mW/cm² at the sleeve and 3 cm of water, by flow (down, ${us ? 'US gal/h' : 'L/h'}) and absorbance at 254 nm (across, for each cm)`,
          corner: us ? 'US gal/h' : 'L/h',
        },
        stepsIn(
          custom,
          [500, 1000, 2000, 4000, 8000],
          [150, 300, 600, 1200, 2400],
          (g) => 3.6e6 * toCubicMetresPerSecond(g, 'galUS/h'),
        ),
        steps([0.01, 0.02, 0.05, 0.1, 0.2]),
        (litres, absorbance) => figure(uvDoseLaw, 0, 1, 20, absorbance, 3, 1.5e-3, litres / 3.6e6),
      ),
      {
        id: 'needed',
        caption: 'mJ/cm² that was published as needed',
        corner: 'Against',
        columns: ['mJ/cm²', 'Source'],
        rows: needs.map(({ of, value, source }) => ({ head: of, cells: [value, source] })),
        words: true,
      },
    ];
  },
};
