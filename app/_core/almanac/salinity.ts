import { compensatedConductivityLaw } from '../water/compensated-conductivity';
import { densityLaw } from '../water/density';
import { freezingPointLaw } from '../water/freezing-point';
import { conductivity, conductivityLaw } from '../water/practical-salinity';
import { GRAVITY_CONVENTIONS, specificGravityLaw } from '../water/specific-gravity';
import { type AlmanacTable, atDegrees, figure, grid, listed, type Step, steps, written } from './table';
import { fromCelsius } from '../units/temperature';

const SALINITIES = [1, 2, 5, 10, 15, 20, 25, 28, 30, 31, 32, 33, 34, 35, 36, 37, 38, 40];
const WARMTHS = [10, 15, 20, 25, 28, 30];

/** Conductivity by temperature, and the one thing that a meter set to compensate shows instead. */
export const SALINITY: AlmanacTable = {
  id: 'salinity',
  title: 'Salinity, conductivity and specific gravity',
  use: 'To check one instrument by another, and to see whether a conductivity is raw or compensated.',
  leavesOut: 'Salts that are not in the sea’s proportions: then conductivity and weight tell different salinities.',
  laws: [
    'practical-salinity',
    'conductivity',
    'compensated-conductivity',
    'raw-conductivity',
    'specific-gravity',
    'salinity-from-gravity',
    'density',
    'ipts-68',
    'freezing-point',
  ],
  sheets: (custom) => [
    grid(
      {
        id: 'conductivity',
        caption: `Conductivity in mS/cm, raw, by salinity (down) and temperature of the water (across, ${custom === 'us' ? '°F' : '°C'})`,
        corner: 'Salinity',
      },
      steps(SALINITIES),
      WARMTHS.map(
        (value): Step => ({ said: String(Math.round(fromCelsius(value, custom === 'us' ? 'F' : 'C'))), value }),
      ),
      (s, t) => figure(conductivityLaw, 2, 1, s, t),
    ),
    grid(
      {
        id: 'compensated',
        caption: `What a meter shows that compensates to ${atDegrees(custom, 25)} by 1.91 % a degree, in mS/cm: the same water, other figures`,
        corner: 'Salinity',
      },
      steps(SALINITIES),
      WARMTHS.map(
        (value): Step => ({ said: String(Math.round(fromCelsius(value, custom === 'us' ? 'F' : 'C'))), value }),
      ),
      (s, t) => figure(compensatedConductivityLaw, 2, 1, conductivity(s, t), t, 25, 0.0191),
    ),
    listed(
      {
        id: 'gravity',
        caption: `Specific gravity in its four conventions, density at ${atDegrees(custom, 25)} in kg/m³, and where it freezes (${custom === 'us' ? '°F' : '°C'})`,
        corner: 'Salinity',
        columns: [...Object.keys(GRAVITY_CONVENTIONS), 'kg/m³', 'Freezes'],
      },
      steps(SALINITIES),
      (s) => [
        ...Object.values(GRAVITY_CONVENTIONS).map(([t, reference]) =>
          figure(specificGravityLaw, 4, 1, s, t, reference),
        ),
        figure(densityLaw, 2, 1, 25, s),
        freezingPointLaw.inRange(s)
          ? written(fromCelsius(freezingPointLaw.compute(s), custom === 'us' ? 'F' : 'C'), 2)
          : '–',
      ],
    ),
  ],
};
