import { type Law, law } from './law';

/** m: no bore is thinner; keeps the powers finite. */
const THINNEST = 1e-4;

/**
 * Speed of water in a full pipe.
 *
 *   v = 4·Q / (π·d²)
 *
 * @param flow m³/s 0 to 10
 * @param bore m    inner diameter; 0.002 to 2
 * @returns    m/s  keep pressure lines below 1.5 to 2 (from memory)
 *
 * Holds      always. Beyond the range: the formula; a bore is never below 0.1 mm, flow never below 0.
 * Leaves out how it is spread over the bore.
 * Source     continuity.
 * Checked    tests/core/water/pipe-flow.test.ts; tests/reference/pipe-velocity.json.
 */
export function pipeVelocity(flow: number, bore: number): number {
  const d = Math.max(THINNEST, bore);
  return (4 * Math.max(0, flow)) / (Math.PI * d * d);
}

/**
 * Head that friction takes in a full straight pipe (Hazen & Williams).
 *
 *   h = 10.67 · L · Q^1.852 / (C^1.852 · d^4.87)
 *
 * @param flow      m³/s 0 to 10
 * @param bore      m    inner diameter; 0.05 to 2
 * @param length    m    0 to 10 000
 * @param roughness 1    C: 150 plastic, 140 new steel, 100 galvanised; 60 to 160
 * @returns         m    of water
 *
 * Holds      for water near 15 °C at 1 to 3 m/s. Beyond the range: the formula, bore never below 0.1 mm, roughness never below
 *            1, less than nothing as nothing.
 * Leaves out bends and valves, slow laminar flow, and narrow hose, where it is a guess.
 * Source     SI form as at smartpluvia.com. One page prints 250^1.852 as 41842 and 150^1.852 as 16847: they are 27605 and 10718.
 * Checked    tests/core/water/pipe-flow.test.ts; tests/reference/pipe-friction.json.
 */
export function pipeFriction(flow: number, bore: number, length: number, roughness: number): number {
  const ratio = Math.max(0, flow) / Math.max(1, roughness);
  return (10.67 * Math.max(0, length) * ratio ** 1.852) / Math.max(THINNEST, bore) ** 4.87;
}

/** m/s². */
const GRAVITY = 9.80665;

/**
 * Power that lifting a flow takes, before the losses of the pump.
 *
 *   P = ρ · g · Q · H
 *
 * @param density kg/m³ of the water; 990 to 1050
 * @param flow    m³/s  0 to 10
 * @param head    m     0 to 200
 * @returns       W     divided by the pump's efficiency (0.3 to 0.6 for small ones, from memory) what the socket gives
 *
 * Holds      always. Beyond the range: the formula, less than nothing as nothing.
 * Leaves out the pump.
 * Source     mechanics.
 * Checked    tests/core/water/pipe-flow.test.ts.
 */
export function pumpPower(density: number, flow: number, head: number): number {
  return Math.max(0, density) * GRAVITY * Math.max(0, flow) * Math.max(0, head);
}

/**
 * Time in which a flow is as much as all the water.
 *
 *   t = V / Q
 *
 * @param volume m³   1e-3 to 1e5
 * @param flow   m³/s 0 to 10
 * @returns      s    Infinity without flow; by then 63 % of the water has been through, not all
 *
 * Holds      by definition. Beyond the range: the formula, less than nothing as nothing.
 * Leaves out short cuts.
 * Source     definition.
 * Checked    tests/core/water/pipe-flow.test.ts.
 */
export function turnover(volume: number, flow: number): number {
  const v = Math.max(0, volume);
  const q = Math.max(0, flow);
  if (v === 0) return Number.isNaN(q) ? q : 0;
  return v / q;
}

const FLOW = { name: 'flow', unit: 'm³/s', low: 0, high: 10 };

export const pipeVelocityLaw: Law<[flow: number, bore: number]> = law('pipe-velocity', 'm/s', pipeVelocity, [
  FLOW,
  { name: 'bore', unit: 'm', low: 0.002, high: 2 },
]);
export const pipeFrictionLaw: Law<[flow: number, bore: number, length: number, roughness: number]> = law(
  'pipe-friction',
  'm',
  pipeFriction,
  [
    FLOW,
    { name: 'bore', unit: 'm', low: 0.05, high: 2 },
    { name: 'length', unit: 'm', low: 0, high: 10_000 },
    { name: 'roughness', unit: '', low: 60, high: 160 },
  ],
);
export const pumpPowerLaw: Law<[density: number, flow: number, head: number]> = law('pump-power', 'W', pumpPower, [
  { name: 'density', unit: 'kg/m³', low: 990, high: 1050 },
  FLOW,
  { name: 'head', unit: 'm', low: 0, high: 200 },
]);
export const turnoverLaw: Law<[volume: number, flow: number]> = law('turnover', 's', turnover, [
  { name: 'volume', unit: 'm³', low: 1e-3, high: 1e5 },
  FLOW,
]);
