import { type Law, law } from './law';

/** √m/s: Francis' constant in SI; 3.33 in feet. */
const FRANCIS = 1.84;

/**
 * Water that flows over a straight edge (Francis).
 *
 *   Q = 1.84 · (L − 0.1·n·H) · H^1.5
 *
 * @param length       m    of the edge; of a toothed one the gaps only; 0.001 to 1000
 * @param head         m    water surface above the edge, before it bends down; 0 to a third of the length
 * @param contractions      ends at which the stream narrows: 0, 1 or 2
 * @returns            m³/s
 *
 * Holds      for a sharp edge with air beneath the stream and a length above three heads. Beyond the range: the formula,
 *            with the effective length never below 0; no head, no flow.
 * Leaves out teeth, weed and a full pipe behind the edge.
 * Source     Francis formula, curioustab.com (mechanical engineering 63383). A page that prints (L − n·H)/10 groups it
 *            wrongly.
 * Checked    tests/core/water/weir.test.ts; tests/reference/weir.json, 1.6 %.
 */
export function weirFlow(length: number, head: number, contractions: number): number {
  const h = Math.max(0, head);
  return FRANCIS * Math.max(0, length - 0.1 * Math.max(0, contractions) * h) * h * Math.sqrt(h);
}

/**
 * How high water stands above an overflow's edge that carries a flow, without contractions.
 *
 *   H = (Q / (1.84·L))^(2/3)
 *
 * @param length m    of the edge, as above; 0.001 to 1000
 * @param flow   m³/s over it; 0 to 100
 * @returns      m    above the edge
 *
 * Holds      as `weirFlow`, whose inverse it is. Beyond the range: less than nothing counts as nothing, an edge below a
 *            micrometre as a micrometre. Teeth add 10 to 20 mm (from memory).
 * Leaves out what `weirFlow` leaves out.
 * Source     as `weirFlow`.
 * Checked    tests/core/water/weir.test.ts: inverse of the flow.
 */
export function weirHead(length: number, flow: number): number {
  return (Math.max(0, flow) / (FRANCIS * Math.max(1e-6, length))) ** (2 / 3);
}

export const weirFlowLaw: Law<[length: number, head: number, contractions: number]> = law(
  'weir-flow',
  'm³/s',
  weirFlow,
  [
    { name: 'length', unit: 'm', low: 1e-3, high: 1000 },
    { name: 'head', unit: 'm', low: 0, high: 100 },
    { name: 'contractions', unit: '', low: 0, high: 2 },
  ],
  (length, head) => (3 * head < length ? null : `head is ${head}, not below a third of the length of ${length} m`),
);

export const weirHeadLaw: Law<[length: number, flow: number]> = law(
  'weir-head',
  'm',
  weirHead,
  [
    { name: 'length', unit: 'm', low: 1e-3, high: 1000 },
    { name: 'flow', unit: 'm³/s', low: 0, high: 100 },
  ],
  (length, flow) =>
    3 * weirHead(length, flow) < length ? null : `flow is ${flow} m³/s, too much for an edge of ${length} m`,
);
