import { toCubicMetresPerSecond, fromCubicMetresPerSecond } from '../units/flow';
import { fromMetres, toMetres } from '../units/length';
import type { Custom } from '../units/shown';
import { toSquareMetres } from '../units/area';
import { fromCubicMetres } from '../units/volume';
import { density } from '../water/density';
import { drainDownVolumeLaw } from '../water/drain-down';
import { drainRateLaw } from '../water/drain-rate';
import { drainTimeLaw } from '../water/drain-time';
import { pipeFrictionLaw, pipeVelocityLaw, pumpPowerLaw } from '../water/pipe-flow';
import { weirHeadLaw } from '../water/weir';
import { type AlmanacTable, figure, grid, listed, type Step, steps, stepsIn } from './table';

const HOSE = 0.5;

/** Depths and bores: m, written in mm or inches. */
function small(custom: Custom, millimetres: number[], inches: number[]): Step[] {
  return stepsIn(custom, millimetres, inches, (value) => 1000 * toMetres(value, 'in')).map(({ said, value }) => ({
    said,
    value: value / 1000,
  }));
}

/** Flows: m³/s, written in L/h or US gallons an hour. */
function flows(custom: Custom): Step[] {
  const us = custom === 'us';
  const values = us ? [250, 500, 1000, 2000, 4000, 8000] : [1000, 2000, 5000, 10_000, 20_000, 30_000];
  return steps(values).map(({ said, value }) => ({
    said,
    value: toCubicMetresPerSecond(value, us ? 'galUS/h' : 'L/h'),
  }));
}

const flowUnit = (custom: Custom) => (custom === 'us' ? 'US gal/h' : 'L/h');
const depthUnit = (custom: Custom) => (custom === 'us' ? 'in' : 'mm');

/** What runs down, and how fast. */
export const DRAINING: AlmanacTable = {
  id: 'draining',
  title: 'Water that runs down',
  use: 'To see what a sump must take up when the return stops, and how long a hose or a siphon takes to empty a tank.',
  leavesOut:
    'Pipes, which run empty too, and weed, sand and kinks. Half of these times stands on one public page: it is wrong.',
  laws: ['drain-down-volume', 'drain-down-depth', 'drain-time', 'drain-rate'],
  sheets: (custom) => [
    grid(
      {
        id: 'volume',
        caption: `${custom === 'us' ? 'US gal' : 'Litres'} that run down, by depth (down, ${depthUnit(custom)}) and surface of all tanks together (across, ${custom === 'us' ? 'ft²' : 'm²'})`,
        corner: depthUnit(custom),
      },
      small(custom, [5, 10, 15, 20, 25, 30, 40, 50], [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2]),
      stepsIn(custom, [0.5, 0.72, 1, 2, 5, 10], [4, 8, 12, 24, 48, 96], (ft2) => toSquareMetres(ft2, 'ft2')),
      (depth, area) =>
        figure(drainDownVolumeLaw, 0, fromCubicMetres(1, custom === 'us' ? 'galUS' : 'L'), area, depth, 0),
    ),
    grid(
      {
        id: 'siphon',
        caption: `${flowUnit(custom)} through a hose (coefficient 0.5), by head (down, ${custom === 'us' ? 'ft' : 'm'}) and bore (across, ${depthUnit(custom)})`,
        corner: custom === 'us' ? 'ft' : 'm',
      },
      stepsIn(custom, [0.1, 0.2, 0.5, 1, 1.5, 2], [0.5, 1, 2, 3, 5], (ft) => toMetres(ft, 'ft')),
      small(custom, [6, 9, 12, 16, 25, 40], [0.25, 0.375, 0.5, 0.75, 1, 1.5]),
      (head, bore) => {
        const opening = (Math.PI / 4) * bore * bore;
        const unit = fromCubicMetresPerSecond(1, custom === 'us' ? 'galUS/h' : 'L/h');
        return figure(drainRateLaw, 0, unit, HOSE, opening, head);
      },
    ),
    grid(
      {
        id: 'time',
        caption: `Minutes for that hose to lower ${custom === 'us' ? '10 ft²' : 'a square metre'} of water by ${custom === 'us' ? '4 in' : '100 mm'}, by head at the start`,
        corner: custom === 'us' ? 'ft' : 'm',
      },
      stepsIn(custom, [0.2, 0.5, 1, 1.5, 2], [1, 2, 3, 5], (ft) => toMetres(ft, 'ft')),
      small(custom, [6, 9, 12, 16, 25, 40], [0.25, 0.375, 0.5, 0.75, 1, 1.5]),
      (head, bore) => {
        const area = custom === 'us' ? toSquareMetres(10, 'ft2') : 1;
        const fall = custom === 'us' ? toMetres(4, 'in') : 0.1;
        return figure(drainTimeLaw, 1, 1 / 60, area, HOSE, (Math.PI / 4) * bore * bore, head, head - fall);
      },
    ),
  ],
};

/** How high water stands above an edge. */
export const WEIR: AlmanacTable = {
  id: 'weir',
  title: 'How high water stands above an overflow’s edge',
  use: 'To see how much of the drain-down stands above the edge, and whether an overflow carries the return.',
  leavesOut:
    'Teeth: count the gaps alone and reckon 10 to 20 mm more (from memory). Weed and a full pipe behind the edge.',
  laws: ['weir-head', 'weir-flow'],
  sheets: (custom) => [
    grid(
      {
        id: 'head',
        caption: `${custom === 'us' ? 'Inches' : 'mm'} above the edge, by flow (down, ${flowUnit(custom)}) and length of the edge (across, ${depthUnit(custom)})`,
        corner: flowUnit(custom),
      },
      flows(custom),
      small(custom, [100, 200, 300, 500, 1000, 2000], [4, 8, 12, 18, 36, 72]),
      (flow, length) =>
        figure(weirHeadLaw, custom === 'us' ? 2 : 1, fromMetres(1, custom === 'us' ? 'in' : 'mm'), length, flow),
    ),
  ],
};

/** What pipes and pumps take. */
export const PIPES: AlmanacTable = {
  id: 'pipes',
  title: 'Pipes and pumps',
  use: 'To see how fast water goes in a pipe, what friction takes, and what lifting it costs.',
  leavesOut:
    'Bends and valves, and pumps: divide the power by 0.3 to 0.6 for a small one (from memory). Friction below 50 mm (2 in) is outside what was published.',
  laws: ['pipe-velocity', 'pipe-friction', 'pump-power', 'turnover'],
  sheets: (custom) => {
    const bores = small(custom, [20, 25, 32, 40, 50, 63, 90], [0.75, 1, 1.25, 1.5, 2, 3, 4]);
    return [
      grid(
        {
          id: 'velocity',
          caption: `${custom === 'us' ? 'ft/s' : 'm/s'} in a pipe, by flow (down, ${flowUnit(custom)}) and bore (across, ${depthUnit(custom)}); keep below 1.5 to 2 m/s (5 to 7 ft/s; from memory)`,
          corner: flowUnit(custom),
        },
        flows(custom),
        bores,
        (flow, bore) => figure(pipeVelocityLaw, 2, fromMetres(1, custom === 'us' ? 'ft' : 'm'), flow, bore),
      ),
      grid(
        {
          id: 'friction',
          caption: `Head lost in ${custom === 'us' ? '100 ft (ft)' : '100 m (m)'} of straight plastic pipe (C 150), by flow (down, ${flowUnit(custom)}) and bore (across, ${depthUnit(custom)})`,
          corner: flowUnit(custom),
        },
        flows(custom),
        bores,
        (flow, bore) => figure(pipeFrictionLaw, 2, 1, flow, bore, 100, 150),
      ),
      listed(
        {
          id: 'lift',
          caption: `Watts that lifting sea water takes before the pump’s own losses, by flow (down, ${flowUnit(custom)}) and head (across)`,
          corner: flowUnit(custom),
          columns: custom === 'us' ? ['3 ft', '6 ft', '12 ft', '24 ft'] : ['1 m', '2 m', '4 m', '8 m'],
        },
        flows(custom),
        (flow) =>
          [1, 2, 4, 8].map((head) =>
            figure(pumpPowerLaw, 1, 1, density(25, 35), flow, custom === 'us' ? toMetres(3 * head, 'ft') : head),
          ),
      ),
    ];
  },
};
