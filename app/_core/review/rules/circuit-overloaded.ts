import type { Circuit } from '../../facility/site';
import { CONTINUOUS_SHARE, continuousLoad } from '../../water/continuous-load';
import { changed, example, withSite } from './example/example';
import { entered } from './example/proven';
import { amount, figure } from './facts/words';
import type { Rule, RuleContext } from './rule';

/** Rated power of everything on a circuit, in all systems of the site, W. What is not known counts as nothing. */
function loadOf({ facility }: RuleContext, { key }: Circuit): number {
  const all = facility.systems.flatMap(({ equipment }) => equipment).filter((one) => one.circuit === key);
  return all.reduce((sum, { ratedW }) => sum + (ratedW?.value ?? 0), 0);
}

/** A circuit that carries more for hours than its breaker should. Screening only: a qualified electrician decides. */
export const rule: Rule = {
  id: 'circuit-overloaded',
  title: 'A circuit carries more than 80 % of its breaker for hours',
  why: 'A breaker at its limit trips on a warm day, when everything on it is needed.',
  source:
    'The 80 % rule of the US electrical code for loads of three hours and more (manhattanreefs.com, electricity, watt vs amp); elsewhere a house rule. Screening only: a qualified electrician decides',
  grade: 'low',
  remedy: 'spread-load',
  check: (context) =>
    context.facility.circuits.flatMap((circuit) => {
      const amps = circuit.breakerA?.value ?? null;
      const volts = circuit.volts?.value ?? null;
      const feeds = context.system.equipment.some((one) => one.circuit === circuit.key);
      if (!feeds || amps === null || volts === null) return [];
      const load = loadOf(context, circuit);
      const most = continuousLoad(amps, volts);
      if (load <= most) return [];
      return [
        {
          cause: circuit.name,
          consequence: `Rated loads of ${amount(load, 'W')} hang on a breaker that should carry ${amount(most, 'W')} for hours.`,
          figures: [
            figure('load', load, 'W'),
            { name: 'breaker', value: `${amount(amps, 'A')} at ${amount(volts, 'V')}` },
            figure(`${CONTINUOUS_SHARE * 100} % of it`, most, 'W'),
          ],
        },
      ];
    }),
  passing: () => example(),
  failing: () =>
    example(withSite(({ circuits }) => ({ circuits: changed(circuits, 'pumps', { breakerA: entered(1) }) }))),
};
