import type { Facility } from '#core/facility/facility';
import type { Figure } from '#core/facility/figure';
import type { Equipment, OperatingState, System } from '#core/facility/system';
import type { Interlock, Plan, Proof } from '#core/plans/plan';
import { entered } from '../../_support/given';
import { dice, randomSite } from './random-system';

type Next = () => number;

/** A random site whose figures are off by up to a factor of seven either way, and whose plans nobody thought through. */
export function wildSite(seed: number): Facility {
  const next = dice(seed + 31);
  const site = blur(randomSite(seed), '', next) as Facility;
  return { ...site, systems: site.systems.map((one) => wildSystem(one, next)) };
}

function blur(part: unknown, name: string, next: Next): unknown {
  if (Array.isArray(part)) return part.map((one) => blur(one, name, next));
  if (typeof part !== 'object' || part === null) return part;
  if ('origin' in part && 'value' in part) return figure(part as Figure, name, next);
  return Object.fromEntries(Object.entries(part).map(([field, one]) => [field, blur(one, field, next)]));
}

function figure(known: Figure, name: string, next: Next): Figure {
  if (known.value === null || name === 'salinity' || next() < 0.5) return known;
  if (name === 'temperatureC') return { ...known, value: known.value + 20 * (next() - 0.5) };
  if (name === 'humidityPct') return { ...known, value: 100 * next() };
  if (name === 'heatToWater') return { ...known, value: next() };
  return { ...known, value: known.value * Math.exp(4 * (next() - 0.5)) };
}

function wildSystem(system: System, next: Next): System {
  const minutes = () => entered(5 + 100 * next());
  const states: OperatingState[] = [
    { name: 'feeding', lastsMin: minutes(), endsBy: 'person' },
    { name: 'water-change', lastsMin: minutes(), endsBy: 'person', drawnL: entered(200 * next()) },
  ];
  const equipment = system.equipment.map((e) => ({ ...e, plan: wildPlan(system, e, next) }));
  return { ...system, states, equipment };
}

function wildPlan(system: System, { type, plan }: Equipment, next: Next): Plan {
  const fixed = type === 'drain-valve';
  return {
    ...plan,
    interlocks: next() < 0.4 ? [interlock(system, next)] : plan.interlocks,
    regulation:
      next() < 0.2 && !fixed ? { kind: 'hours', from: '08:00', to: '19:00', by: 'controller' } : narrow(plan, next),
    states: next() < 0.5 && !fixed ? [{ state: 'feeding', then: next() < 0.8 ? 'off' : 'on', by: 'controller' }] : [],
  };
}

function interlock(system: System, next: Next): Interlock {
  const by = next() < 0.5 ? 'hard-wired' : 'controller';
  const probe = system.sensors[0];
  if (probe && next() < 0.4)
    return { when: { kind: 'sensor', sensor: probe.key, above: 24 + 4 * next() }, then: 'off', by };
  const proofs: readonly Proof[] = ['flow', 'watts', 'command'];
  return { when: { kind: 'return-lost', provedBy: proofs[Math.floor(3 * next())] ?? 'flow' }, then: 'off', by };
}

function narrow({ regulation }: Plan, next: Next): Plan['regulation'] {
  if (regulation.kind !== 'thermostat' || next() < 0.5) return regulation;
  const lowC = regulation.highC - 0.02 - 0.3 * next();
  return { ...regulation, lowC, minOnS: 300 * next(), minOffS: 600 * next() };
}
