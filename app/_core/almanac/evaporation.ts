import { fromCubicMetres } from '../units/volume';
import { fromSquareMetres } from '../units/area';
import { density } from '../water/density';
import { evaporation, evaporationHeat } from '../water/evaporation';
import { CALM, evaporationTransfer } from '../water/evaporation-transfer';
import { surfaceConvection } from '../water/surface-convection';
import { vapourPressure } from '../water/vapour-pressure';
import type { Custom } from '../units/shown';
import { type AlmanacTable, atDegrees, degrees, grid, listed, steps, temperatures, written } from './table';

const ROOM = 22;
const AIR_SPEED = 0.1;
const SALINITY = 35;

/** What a calm surface loses. */
export const EVAPORATION: AlmanacTable = {
  id: 'evaporation',
  title: 'Evaporation and what it cools',
  use: 'To size a top-off reservoir, and to see how much of the heat goes by way of the surface.',
  leavesOut:
    'To a factor of two either way: draughts, a lid, strong overflow (twice as much), and air as warm as the water (half). Below nothing the room wets the water.',
  laws: [
    'evaporation',
    'evaporation-transfer',
    'vapour-pressure',
    'salinity-vapour-factor',
    'latent-heat',
    'surface-convection',
  ],
  sheets: (custom) => [
    grid(
      {
        id: 'a-day',
        caption: `${custom === 'us' ? 'US gal a day from a square foot' : 'Litres a day from a square metre'} of calm sea water, by its temperature (down) and the room’s humidity at ${atDegrees(custom, ROOM)} (across, %)`,
        corner: degrees(custom),
      },
      temperatures(custom, 18, 32),
      steps([30, 40, 50, 60, 70, 80]),
      (t, humidity) => written(perDay(custom, t, humidity / 100), custom === 'us' ? 3 : 1),
    ),
    grid(
      {
        id: 'heat',
        caption: `Watts that ${custom === 'us' ? 'a square foot' : 'a square metre'} of it gives off by evaporation, likewise`,
        corner: degrees(custom),
      },
      temperatures(custom, 18, 32),
      steps([30, 40, 50, 60, 70, 80]),
      (t, humidity) => {
        const heat = evaporationHeat(t, SALINITY, (humidity / 100) * vapourPressure(ROOM), transfer());
        return written(heat / fromSquareMetres(1, custom === 'us' ? 'ft2' : 'm2'), 0);
      },
    ),
    listed(
      {
        id: 'vapour',
        caption: `Vapour pressure over fresh water, and watts that ${custom === 'us' ? 'a square foot' : 'a square metre'} gives to air ${custom === 'us' ? '2 °F' : '1 °C'} cooler without evaporating`,
        corner: degrees(custom),
        columns: ['Pa', 'W'],
      },
      temperatures(custom, 18, 32),
      (t) => [
        written(vapourPressure(t), 0),
        written(
          surfaceConvection(1 / fromSquareMetres(1, custom === 'us' ? 'ft2' : 'm2')) * (custom === 'us' ? 10 / 9 : 1),
          2,
        ),
      ],
    ),
  ],
};

function transfer(): number {
  return evaporationTransfer(1, AIR_SPEED, CALM);
}

function perDay(custom: Custom, t: number, humidity: number): number {
  const kilograms = 86_400 * evaporation(t, SALINITY, humidity * vapourPressure(ROOM), transfer());
  // Below 0 where the room wets the water instead.
  const said =
    fromCubicMetres(1, custom === 'us' ? 'galUS' : 'L') / fromSquareMetres(1, custom === 'us' ? 'ft2' : 'm2');
  return (said * kilograms) / density(t, 0);
}
