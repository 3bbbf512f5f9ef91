import { fromKilograms, toKilograms } from '../units/mass';
import { gasTransferFactorLaw } from '../water/gas-transfer';
import { fieldTransferLaw } from '../water/field-transfer';
import { hypoxiaTimeLaw } from '../water/hypoxia-time';
import { oxygenSaturation } from '../water/oxygen-saturation';
import { respirationLaw } from '../water/respiration';
import { stillSurfaceTransferLaw } from '../water/still-surface-transfer';
import { type AlmanacTable, atDegrees, degrees, figure, grid, listed, steps, stepsIn, temperatures } from './table';

const RESTING =
  'Single species lie between a quarter and three times it; feeding and fright make two to three times more (from memory). Sharks, rays and invertebrates are not in it.';

/** What fish breathe. */
export const RESPIRATION: AlmanacTable = {
  id: 'respiration',
  title: 'Oxygen that fish use at rest',
  use: 'To estimate the oxygen demand of a stock from the mass of one fish and the temperature.',
  leavesOut: RESTING,
  laws: ['respiration'],
  sheets: (custom) => [
    grid(
      {
        id: 'each',
        caption: `mg of oxygen an hour for one fish, by temperature (down) and its mass (across, ${custom === 'us' ? 'oz' : 'g'})`,
        corner: degrees(custom),
      },
      temperatures(custom, 4, 30),
      masses(custom),
      (t, kilograms) => figure(respirationLaw, 1, 3.6e6, t, kilograms),
    ),
    grid(
      {
        id: 'kilogram',
        caption: `mg of oxygen an hour for each ${custom === 'us' ? 'pound' : 'kilogram'} of fish of that mass`,
        corner: degrees(custom),
      },
      temperatures(custom, 4, 30),
      masses(custom),
      (t, kilograms) =>
        figure(respirationLaw, 0, 3.6e6 / fromKilograms(kilograms, custom === 'us' ? 'lb' : 'kg'), t, kilograms),
    ),
  ],
};

function masses(custom: 'metric' | 'us') {
  return stepsIn(
    custom,
    [5, 10, 50, 200, 1000, 5000],
    [0.2, 0.5, 2, 8, 32, 160],
    (oz) => 1000 * toKilograms(oz, 'oz'),
  ).map(({ said, value }) => ({ said, value: value / 1000 }));
}

/** How long oxygen lasts, and what aeration gives. */
export const AERATION: AlmanacTable = {
  id: 'aeration',
  title: 'How long oxygen lasts, and what aeration gives',
  use: 'To see how soon oxygen is low once aeration is lost, and how much less an aerator gives than its label.',
  leavesOut:
    'That animals breathe less in thin water, which makes the times err on the safe side; dead corners, which do not.',
  laws: ['hypoxia-time', 'gas-transfer', 'still-surface-transfer', 'field-transfer'],
  sheets: (custom) => [
    grid(
      {
        id: 'lasts',
        caption: `Minutes from saturation to 3 mg/L in sea water of 35 at ${atDegrees(custom, 25)}, by demand (down, mg/L an hour) and gas transfer that is left (across, kLa an hour)`,
        corner: 'mg/L·h',
      },
      steps([0.5, 1, 2, 3, 5, 10, 20]),
      steps([0, 0.05, 0.1, 0.2, 0.5, 1]),
      (demand, transfer) => {
        const full = oxygenSaturation(25, 35, 1);
        return figure(hypoxiaTimeLaw, 0, 1 / 60, full, 3, full, transfer / 3600, demand / 3600);
      },
    ),
    grid(
      {
        id: 'label',
        caption: `Percent of its label (SOTR) that an aerator gives in clean water at ${atDegrees(custom, 25)}, by oxygen in the tank (down, mg/L) and salinity (across)`,
        corner: 'mg/L',
      },
      steps([0, 2, 3, 4, 5, 6]),
      steps([0, 10, 20, 30, 35]),
      (oxygen, s) => figure(fieldTransferLaw, 0, 1, 100, 1, oxygen, 25, s, 1),
    ),
    listed(
      {
        id: 'transfer',
        caption:
          'Gas transfer as a multiple of that at 20 °C (68 °F), and metres a day of water that a still surface brings into balance',
        corner: degrees(custom),
        columns: ['multiple', 'm a day'],
      },
      temperatures(custom, 6, 34),
      (t) => [figure(gasTransferFactorLaw, 2, 1, t), figure(stillSurfaceTransferLaw, 2, 86_400, t)],
    ),
  ],
};
