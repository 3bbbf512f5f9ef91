import { toSquareMetres } from '../units/area';
import { toMetres } from '../units/length';
import { toKelvinDifference } from '../units/temperature-difference';
import materials from '../water/materials.json';
import { AIR_SIDE, layerResistance, WATER_SIDE, wallTransmittanceLaw } from '../water/wall-transmittance';
import { type AlmanacTable, figure, grid, stepsIn } from './table';

const NAMES = ['glass', 'acrylic', 'concrete', 'insulated'] as const;

/** Heat through a wall with water inside and still air outside. */
export const WALLS: AlmanacTable = {
  id: 'walls',
  title: 'Heat through a wall',
  use: 'To estimate the heat a tank loses through its walls: times area, times degrees above the room.',
  leavesOut: 'Braces, stands and floors; conductivities of concrete and insulation are from memory.',
  laws: ['wall-transmittance', 'layer-resistance'],
  sheets: (custom) => [
    grid(
      {
        id: 'transmittance',
        caption: `W for each ${custom === 'us' ? 'ft² and °F' : 'm² and °C'} between water and air, by thickness (down, ${custom === 'us' ? 'in' : 'mm'}) and material (across)`,
        corner: custom === 'us' ? 'in' : 'mm',
      },
      stepsIn(
        custom,
        [4, 6, 8, 10, 12, 15, 19, 24, 50, 100],
        [0.25, 0.375, 0.5, 0.75, 1, 2, 4],
        (inches) => 1000 * toMetres(inches, 'in'),
      ),
      NAMES.map((said, value) => ({ said, value })),
      (millimetres, i) => {
        const name = NAMES[i];
        const conductivity = name === undefined ? Number.NaN : materials[name].conductivity;
        const resistance = layerResistance(millimetres / 1000, conductivity);
        const per = custom === 'us' ? toSquareMetres(1, 'ft2') * toKelvinDifference(1, 'F') : 1;
        return figure(wallTransmittanceLaw, 2, per, WATER_SIDE, resistance, AIR_SIDE);
      },
    ),
  ],
};
