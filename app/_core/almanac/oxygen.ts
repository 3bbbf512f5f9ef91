import { toMetres } from '../units/length';
import { oxygenPercentLaw } from '../water/oxygen-units';
import { oxygenSaturationLaw } from '../water/oxygen-saturation';
import { pressureFromAltitude } from '../water/pressure-from-altitude';
import { type AlmanacTable, atDegrees, degrees, figure, grid, steps, stepsIn, temperatures } from './table';

const ATMOSPHERE = 101_325;
const SALINITIES = [0, 10, 20, 30, 33, 35, 40];

/** What water in balance with the air holds. */
export const OXYGEN: AlmanacTable = {
  id: 'oxygen-saturation',
  title: 'Oxygen in balance with the air',
  use: 'To see how much oxygen water can hold at most, and whether a reading in mg/L is low or only warm, salt or high up.',
  leavesOut:
    'Bubbles pressed down at depth, which lift water above this. A widely copied table by salinity is really by chloride.',
  laws: ['oxygen-saturation', 'pressure-from-altitude', 'garcia-gordon', 'weiss-oxygen', 'oxygen-micromoles'],
  sheets: (custom) => [
    grid(
      {
        id: 'by-salinity',
        caption: 'mg/L at one atmosphere, by temperature (down) and salinity (across)',
        corner: degrees(custom),
      },
      temperatures(custom, 0, 40),
      steps(SALINITIES),
      (t, s) => figure(oxygenSaturationLaw, 2, 1, t, s, 1),
    ),
    ...[0, 35].map((s) =>
      grid(
        {
          id: s === 0 ? 'fresh-by-altitude' : 'sea-by-altitude',
          caption: `mg/L in ${s === 0 ? 'fresh water' : 'sea water of 35'}, by temperature (down) and altitude (across, ${custom === 'us' ? 'ft' : 'm'})`,
          corner: degrees(custom),
        },
        temperatures(custom, 0, 40),
        stepsIn(custom, [0, 250, 500, 1000, 1500, 2000], [0, 1000, 2000, 3000, 5000, 7000], (ft) => toMetres(ft, 'ft')),
        (t, z) => figure(oxygenSaturationLaw, 2, 1, t, s, pressureFromAltitude(z) / ATMOSPHERE),
      ),
    ),
  ],
};

/** The same water as a percentage. */
export const OXYGEN_PERCENT: AlmanacTable = {
  id: 'oxygen-percent',
  title: 'Oxygen as a percentage of saturation',
  use: 'To compare limits and readings that are given in mg/L with those given in percent.',
  leavesOut:
    'Altitude: at 1000 m (3300 ft) the same mg/L are an eighth more percent. Forgotten salt makes 89 % read 73 %.',
  laws: ['oxygen-percent'],
  sheets: (custom) =>
    [0, 35].map((s) =>
      grid(
        {
          id: s === 0 ? 'fresh' : 'sea',
          caption: `Percent in ${s === 0 ? 'fresh water' : 'sea water of 35'} at one atmosphere, by mg/L (down) and temperature (across, ${degrees(custom)})`,
          corner: 'mg/L',
        },
        steps([1, 2, 3, 4, 5, 5.5, 6, 6.5, 7, 8, 9, 10]),
        [10, 15, 20, 25, 28, 30].map((value) => ({ said: atDegrees(custom, value).slice(0, -3), value })),
        (oxygen, t) => figure(oxygenPercentLaw, 0, 1, oxygen, t, s, 1),
      ),
    ),
};
