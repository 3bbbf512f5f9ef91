import { toCubicMetres } from '../units/volume';
import { toKelvinDifference } from '../units/temperature-difference';
import { density } from '../water/density';
import { heatCapacity } from '../water/heat-capacity';
import { timeToLimitLaw } from '../water/time-to-limit';
import { type AlmanacTable, BEYOND, degrees, grid, steps, stepsIn, written, figure } from './table';

const ROOM = 20;
/** J/K of any size will do: only its ratio to the loss counts. */
const CAPACITY = 1e6;

/** Times in which water cools and warms. */
export const WARMTH: AlmanacTable = {
  id: 'warmth',
  title: 'How fast water cools and warms',
  use: 'To see how long a tank is safe when heating is lost, and how fast a heater stuck on warms it.',
  leavesOut:
    'Sump and display that part when the return stops, and evaporation that falls as the water cools. The time constant is heat capacity over heat lost a degree; measure it on a night with the heater off.',
  laws: ['cooling', 'time-to-limit', 'heat-capacity'],
  sheets: (custom) => {
    const kelvin = (value: number) => toKelvinDifference(value, custom === 'us' ? 'F' : 'C');
    const falls = stepsIn(custom, [1, 2, 3, 4, 5], [2, 4, 6, 8, 10], kelvin);
    return [
      ...[12, 24].map((tau) =>
        grid(
          {
            id: `falls-${tau}h`,
            caption: `Hours to fall by so many ${degrees(custom)} (across) from so many above the room (down), with a time constant of ${tau} h`,
            corner: degrees(custom),
          },
          stepsIn(custom, [2, 4, 6, 8, 10, 15], [4, 8, 12, 16, 20, 30], kelvin),
          falls,
          (above, fall) => hoursToFall(above, fall, tau),
        ),
      ),
      grid(
        {
          id: 'warms',
          caption: `Hours for sea water to warm by one ${custom === 'us' ? 'degree Fahrenheit' : 'degree'} with nothing lost, by volume (down, ${custom === 'us' ? 'US gal' : 'L'}) and power (across, W)`,
          corner: custom === 'us' ? 'US gal' : 'L',
        },
        stepsIn(custom, [50, 100, 200, 500, 1000, 5000], [15, 25, 50, 100, 250, 1000], (gallons) => litres(gallons)),
        steps([50, 100, 200, 300, 500, 1000]),
        (volume, power) => {
          const capacity = (volume / 1000) * density(25, 35) * heatCapacity(25, 35);
          return figure(timeToLimitLaw, 1, 1 / 3600, 25, 25, power, capacity, 0, 25 + kelvin(1));
        },
      ),
    ];
  },
};

function hoursToFall(above: number, fall: number, tau: number): string {
  if (fall > above) return BEYOND;
  const loss = CAPACITY / (tau * 3600);
  const seconds = timeToLimitLaw.compute(ROOM + above, ROOM, 0, CAPACITY, loss, ROOM + above - fall);
  return fall === above ? 'never' : written(seconds / 3600, 1);
}

function litres(gallons: number): number {
  return 1000 * toCubicMetres(gallons, 'galUS');
}
