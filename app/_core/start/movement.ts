import type { Equipment } from '../facility/system';
import type { LevelControl } from '../plans/plan';
import type { TopOffAnswer } from './answers';
import { ALWAYS, entered, type Ground, onCircuit, oneOf, type Parts, plainPlan, TEST_EVERY_DAYS } from './parts';
import { reservoirOf } from './water-bodies';

/** What moves and airs the water. All of it runs all the time. */
export function movementParts({ answers, tanks, plant }: Ground): Parts {
  const { sump, movement, power } = answers;
  const pumps = onCircuit(power.pumps);
  const returns = Array.from(
    { length: sump?.pumps ?? 0 },
    (_, at): Equipment => ({
      ...oneOf('return-pump', 'Return pump', at, sump?.pumps ?? 0),
      type: 'return-pump',
      tank: plant.key,
      ...pumps,
      flowLPerH: entered(sump?.flowLPerH ?? 0),
      plan: plainPlan(ALWAYS),
    }),
  );
  const skimmer: Equipment[] =
    movement.skimmer === 'yes'
      ? [{ key: 'skimmer', name: 'Skimmer', type: 'skimmer', tank: plant.key, ...pumps, plan: plainPlan(ALWAYS) }]
      : [];
  return {
    equipment: [
      ...returns,
      ...circulationOf({ answers, tanks, plant }),
      ...airOf({ answers, tanks, plant }),
      ...skimmer,
    ],
  };
}

function circulationOf({ answers: { movement, power }, tanks }: Ground): Equipment[] {
  const { circulation } = movement;
  if (!circulation) return [];
  const { eachTank, flowLPerH } = circulation;
  const count = eachTank * tanks.length;
  return Array.from(
    { length: count },
    (_, at): Equipment => ({
      ...oneOf('circulation-pump', 'Circulation pump', at, count),
      type: 'circulation-pump',
      tank: tanks[Math.floor(at / eachTank)]?.key ?? '',
      ...onCircuit(power.pumps),
      flowLPerH: entered(flowLPerH),
      plan: plainPlan(ALWAYS),
    }),
  );
}

function airOf({ answers: { movement, power }, tanks }: Ground): Equipment[] {
  const [first] = tanks;
  if (!(movement.air && first)) return [];
  const { stonesEachTank: count } = movement.air;
  return [
    {
      key: 'air-blower',
      name: 'Air blower',
      type: 'air-blower',
      tank: first.key,
      ...onCircuit(power.air),
      stones: tanks.map(({ key }) => ({ tank: key, count })),
      plan: plainPlan(ALWAYS),
    },
  ];
}

/** Where filling begins, mm below the running level. Common practice, no source. */
const FILLS_FROM_MM = -5;

/** The top-off with its level sensor, and the reservoir it takes from. */
export function topOffParts({ answers: { topOff, power }, plant }: Ground): Parts {
  if (!topOff) return {};
  const { runLimitMin } = topOff;
  return {
    tanks: topOff.from === 'reservoir' ? [reservoirOf(topOff.holdsL)] : [],
    equipment: [
      {
        key: 'top-off',
        name: 'Top-off',
        type: 'top-off',
        tank: plant.key,
        ...onCircuit(power.pumps),
        source: topOff.from,
        plan: plainPlan(levelControl(topOff)),
      },
    ],
    sensors: [{ key: 'level', name: 'Level of the top-off', quantity: 'level', tank: plant.key }],
    safeguards:
      runLimitMin === undefined
        ? []
        : [
            {
              key: 'top-off-run-limit',
              name: 'Run limit of the top-off',
              kind: 'run-limit',
              testEveryDays: TEST_EVERY_DAYS,
              tests: [],
            },
          ],
  };
}

function levelControl({ by, runLimitMin }: TopOffAnswer): LevelControl {
  const control: LevelControl = { kind: 'level', sensor: 'level', lowMm: FILLS_FROM_MM, highMm: 0, by };
  return runLimitMin === undefined ? control : { ...control, runLimitMin, runLimitSafeguard: 'top-off-run-limit' };
}
