import type { CarriedOutBy } from '#core/facility/site';
import type { SensorQuantity } from '#core/facility/system';
import type { Condition, CutOut, Interlock, Plan, Regulation, Thermostat } from '#core/plans/plan';
import type { Custom } from '#core/units/shown';
import { inUnits, symbolOf } from '../units/figures';
import type { Speech } from './said';

/** One line of a plan in words. */
export interface PlanLine {
  /** Its layer of authority, highest first. */
  layer: 'cut-out' | 'interlock' | 'lost sensing' | 'operating state' | 'regulation';
  says: string;
  by: CarriedOutBy;
  /** Name of the safeguard it is, if it has a ledger. */
  safeguard?: string;
}

/** The plan of a piece of equipment, layer by layer, highest authority first. */
export function planLines(speech: Speech, { plan }: { plan: Plan }): PlanLine[] {
  const named = (key: string | undefined) => (key === undefined ? undefined : speech.names.safeguard(key));
  return [
    ...plan.cutOuts.map(
      (line): PlanLine => ({
        layer: 'cut-out',
        says: cutOutSaid(speech, line),
        by: 'hard-wired',
        safeguard: named(line.safeguard),
      }),
    ),
    ...plan.interlocks.map(
      (line): PlanLine => ({
        layer: 'interlock',
        says: interlockSaid(speech, line),
        by: line.by,
        safeguard: named(line.safeguard),
      }),
    ),
    ...(plan.lostSensing
      ? [
          {
            layer: 'lost sensing',
            says:
              plan.lostSensing.action === 'hold'
                ? 'stays as it is when its probe gives nothing usable'
                : `${plan.lostSensing.action} when its probe gives nothing usable`,
            by: plan.lostSensing.by,
          } as const,
        ]
      : []),
    ...plan.states.map(
      (line): PlanLine => ({
        layer: 'operating state',
        says: `${line.then} during ${line.state.replaceAll('-', ' ')}`,
        by: line.by,
      }),
    ),
    {
      layer: 'regulation',
      says: regulationSaid(speech, plan.regulation),
      by: plan.regulation.by,
      safeguard: plan.regulation.kind === 'level' ? named(plan.regulation.runLimitSafeguard) : undefined,
    },
  ];
}

function cutOutSaid({ units, names }: Speech, line: CutOut): string {
  const kind = line.quantity === 'temperature' ? 'temperature' : 'length';
  const bounds = [
    line.above === undefined ? '' : `above ${setPoint(units, kind, line.above)}`,
    line.below === undefined ? '' : `below ${setPoint(units, kind, line.below)}`,
  ];
  return `off ${bounds.filter(Boolean).join(' or ')} in ${names.tank(line.tank)}, reset ${line.reset === 'manual' ? 'by hand' : 'by itself'}`;
}

function interlockSaid(speech: Speech, line: Interlock): string {
  return `${line.then} while ${conditionSaid(speech, line.when)}`;
}

/** Unit of a bound on what a sensor reads: that of the plan, as it is typed, in either custom. */
const BOUND_UNITS: Partial<Record<SensorQuantity, string>> = {
  temperature: '°C',
  level: 'mm',
  flow: 'L/h',
  oxygen: 'mg/L',
  watts: 'W',
  'oxygen-saturation': '%',
  conductivity: 'mS/cm',
  redox: 'mV',
  ammonia: 'mg/L',
  nitrite: 'mg/L',
  nitrate: 'mg/L',
  phosphate: 'mg/L',
  alkalinity: 'mmol/L',
  pressure: 'kPa',
  turbidity: 'NTU',
};

function conditionSaid({ names }: Speech, when: Condition): string {
  if (when.kind === 'return-lost')
    return when.provedBy === 'command'
      ? 'the return is told to stop'
      : `the return is lost, proved by ${when.provedBy}`;
  const quantity = names.measures(when.sensor);
  const unit = quantity && BOUND_UNITS[quantity] ? `\u00a0${BOUND_UNITS[quantity]}` : '';
  const bounds = [
    when.above === undefined ? '' : `above ${when.above}${unit}`,
    when.below === undefined ? '' : `below ${when.below}${unit}`,
  ];
  return `“${names.sensor(when.sensor)}” is ${bounds.filter(Boolean).join(' or ')}`;
}

function regulationSaid({ units, names }: Speech, regulation: Regulation): string {
  switch (regulation.kind) {
    case 'always':
      return 'runs all the time';
    case 'never':
      return 'runs only when a person opens or starts it';
    case 'thermostat': {
      const vote = regulation.vote === 'single' ? '' : `, ${regulation.vote} of ${regulation.sensors.length}`;
      return `holds ${setPoint(units, 'temperature', regulation.lowC)} to ${setPoint(units, 'temperature', regulation.highC)} by ${regulation.sensors.map(names.sensor).join(', ')}${vote}${pacesSaid(regulation)}`;
    }
    case 'level': {
      const limit =
        regulation.runLimitMin === undefined ? 'no run limit' : `at most ${regulation.runLimitMin} min a run`;
      return `fills from ${setPoint(units, 'length', regulation.lowMm)} to ${setPoint(units, 'length', regulation.highMm)} by ${names.sensor(regulation.sensor)}, ${limit}`;
    }
    case 'hours':
      return `on from ${regulation.from} to ${regulation.to}`;
  }
}

/** The shortest run and pause of a thermostat, where the plan sets them: a change of either must show. */
function pacesSaid({ minOnS, minOffS }: Thermostat): string {
  const run = minOnS === undefined ? '' : `, runs at least ${minOnS}\u00a0s`;
  return `${run}${minOffS === undefined ? '' : `, pauses at least ${minOffS}\u00a0s`}`;
}

/**
 * A set-point to a hundredth, so that whoever looks at two plans sees every change of it.
 * @param value °C or mm
 */
function setPoint(units: Custom, kind: 'temperature' | 'length', value: number): string {
  const shown = inUnits(units, kind, value)
    .toFixed(2)
    .replace(/0$/, '')
    .replace(kind === 'length' ? /\.0?$/ : /$^/, '');
  return `${shown}\u00a0${symbolOf(units, kind)}`;
}
