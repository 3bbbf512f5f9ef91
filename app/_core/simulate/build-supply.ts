import { DEFAULTS } from '../equipment/defaults';
import { LESS, MORE, take, type Taker } from '../equipment/take';
import type { Circuit } from '../facility/site';
import type { Facility } from '../facility/facility';
import type { Upset } from '../faults/upset';
import type { Credit } from '../plans/credit';
import type { PowerPhase } from './device';

/** Answers for every circuit, when it is live. */
export type Supply = (circuit: string | undefined) => PowerPhase[];

/**
 * Supply of circuits under an upset. What names no circuit hangs on one of its own that nothing backs.
 * @param credited which batteries and generators are counted on
 */
export function buildSupply(facility: Facility, upset: Upset, credited: Credit, t: Taker): Supply {
  const circuits = new Map(facility.circuits.map((c) => [c.key, c]));
  const cache = new Map<string, PowerPhase[]>();
  return (key) => {
    const known = cache.get(key ?? '');
    if (known) return known;
    const circuit = key === undefined ? undefined : circuits.get(key);
    const phases =
      key !== undefined && upset.deadCircuits.has(key)
        ? steady(false)
        : upset.utilityDown
          ? backed(facility, circuit, upset, credited, t)
          : steady(true);
    cache.set(key ?? '', phases);
    return phases;
  };
}

/** The same supply for ever. */
export function steady(live: boolean): PowerPhase[] {
  return [{ fromS: 0, live, thanks: [] }];
}

interface Span {
  from: number;
  to: number;
  thanks: string[];
}

function backed(
  facility: Facility,
  circuit: Circuit | undefined,
  upset: Upset,
  credited: Credit,
  t: Taker,
): PowerPhase[] {
  const spans: Span[] = [];
  if (circuit?.backedBy.includes('ups') && !upset.batteriesFail && credited(circuit.upsSafeguard)) {
    const minutes = take(
      t,
      `circuits/${circuit.key}/upsMin`,
      `battery time of ${circuit.name}`,
      circuit.upsMin,
      LESS,
      DEFAULTS.upsMin,
    );
    spans.push({ from: 0, to: minutes * 60, thanks: thanksTo(circuit.upsSafeguard) });
  }
  const { generator } = facility.site;
  if (generator && circuit?.backedBy.includes('generator') && !upset.generatorFails && credited(generator.safeguard)) {
    const start = take(
      t,
      'site/generator/startsAfterS',
      'start of the generator',
      generator.startsAfterS,
      MORE,
      DEFAULTS.generatorStartS,
    );
    const fuel = take(
      t,
      'site/generator/fuelH',
      'fuel of the generator',
      generator.fuelH,
      LESS,
      DEFAULTS.generatorFuelH,
    );
    const runs = Math.min(fuel * 3600, upset.generatorDiesS);
    spans.push({ from: start, to: start + runs, thanks: thanksTo(generator.safeguard) });
  }
  if (upset.utilityBackS < Number.POSITIVE_INFINITY)
    spans.push({ from: upset.utilityBackS, to: Number.POSITIVE_INFINITY, thanks: [] });
  return phasesOf(spans);
}

function thanksTo(safeguard: string | undefined): string[] {
  return safeguard ? [safeguard] : [];
}

function phasesOf(spans: Span[]): PowerPhase[] {
  const ends = spans.flatMap((s) => [s.from, s.to]).filter((t) => t < Number.POSITIVE_INFINITY);
  const times = [...new Set([0, ...ends])].sort((a, b) => a - b);
  return times.map((fromS) => {
    const over = spans.filter((s) => s.from <= fromS && fromS < s.to);
    return { fromS, live: over.length > 0, thanks: over.flatMap((s) => s.thanks) };
  });
}
