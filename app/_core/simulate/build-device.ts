import type { ResolvedDevice } from '../equipment/resolved';
import { stateNow, type Build } from './build';
import type { Device, DeviceInterlock, Regulated } from './device';
import { linear, voted } from './signal';
import { levelSignal, signalOf } from './build-signals';
import { STRIDE, TEMPERATURE } from './plant';
import { type Watch, watch } from './watch';
import type { SensorQuantity } from '../facility/system';
import type { CutOut, Interlock, Thermostat } from '../plans/plan';
import { secondsOf } from './build-chemistry';
import { chemistryOf, makeUpOf } from './build-brought';

/** A watts range that begins below this part of the rated power would not notice a pump that moves nothing. Common practice, no source. */
export const IDLE_SHARE = 0.1;

/** One device of a run, healthy or upset, with the watches its plan needs pushed onto the build. */
export function buildDevice(build: Build, resolved: ResolvedDevice, index: number): Device {
  const { equipment } = resolved;
  const { plan } = equipment;
  const node = build.places.node(equipment.tank);
  const open = build.upset.openWaste.has(equipment.key);
  const left = build.upset.weakened.get(equipment.key) ?? 1;
  const lostAction = plan.lostSensing && plan.lostSensing.by !== 'person' ? plan.lostSensing.action : 'hold';
  const regulated = regulation(build, resolved, index);
  return {
    key: equipment.key,
    type: equipment.type,
    node: Math.max(0, node),
    phases: build.supply(equipment.circuit),
    health: build.upset.health.get(equipment.key) ?? 'ok',
    watts: resolved.watts * (HEATS.has(equipment.type) ? left : 1),
    // Equipment in a reservoir warms nothing that is simulated.
    heatShare: node < 0 ? 0 : resolved.heatShare,
    ranged: (equipment.wattsRange?.minW ?? 0) > IDLE_SHARE * resolved.watts,
    cutOuts: plan.cutOuts
      .filter((c) => build.credited(c.safeguard))
      .map((c) => ({ watch: cutOut(build, c, index), safeguard: c.safeguard })),
    interlocks: plan.interlocks
      .filter((l) => l.by !== 'person' && build.credited(l.safeguard))
      .map((l) => interlock(build, l, index)),
    lostAction,
    stateThen: stateNow(build, equipment),
    regulated,
    delivers:
      equipment.type === 'return-pump' ? Float64Array.from(build.tanks, (t) => t.share * resolved.flow * left) : null,
    gas: resolved.gas.map((g) => ({ node: build.places.node(g.tank), flow: g.flow * left })).filter((g) => g.node >= 0),
    coolingW: resolved.coolingW * left,
    makeUp: makeUpOf(build, resolved, left),
    ...chemistryOf(build, resolved, left),
    noRestart: build.upset.noRestart.has(equipment.key),
    wasteFlow: open ? resolved.waste : 0,
    flood: flood(build, resolved, node, index),
    ...AT_REST,
    on: build.snapshot?.on[index] ?? false,
    ...heldOn(regulated, lostAction),
  };
}

/** What is weakened gives less heat; everything else goes on drawing its power. */
const HEATS: ReadonlySet<string> = new Set(['heater', 'light']);

/** Before anything has been settled. */
const AT_REST = {
  powered: true,
  wasDark: false,
  command: false,
  contacts: true,
  drawing: false,
  working: false,
  dry: false,
  lockedOut: false,
  switchedS: Number.NEGATIVE_INFINITY,
};

/** A plan that holds its last command is taken to have been running: that is the dangerous half. */
function heldOn(regulated: Regulated, lostAction: Device['lostAction']): Partial<Device> {
  return regulated.watch?.signal.kind === 'lost' && lostAction === 'hold' ? { on: true } : {};
}

function cutOut(build: Build, line: CutOut, index: number): Watch {
  const node = Math.max(0, build.places.node(line.tank));
  const signal = line.quantity === 'temperature' ? linear(STRIDE * node + TEMPERATURE) : levelSignal(build.plant, node);
  const band = line.quantity === 'temperature' ? 1 : 10;
  const high = line.above !== undefined;
  const at = (high ? line.above : line.below) ?? Number.NaN;
  const w = watch('cut-out', index, signal, high ? 1 : -1, at, high ? at - band : at + band, line.reset === 'manual');
  build.watches.push(w);
  return w;
}

/** How far back a value must come before an interlock lets go, in its own unit; others a tenth of the limit. Common practice, no source. */
const BAND: Partial<Record<SensorQuantity, number>> = {
  level: 2,
  temperature: 0.1,
  salinity: 0.1,
  oxygen: 0.1,
  ph: 0.1,
  'oxygen-saturation': 1,
  conductivity: 0.1,
  alkalinity: 0.1,
};

function interlock(build: Build, line: Interlock, index: number): DeviceInterlock {
  const base = { then: line.then, hardWired: line.by === 'hard-wired', safeguard: line.safeguard ?? null };
  if (line.when.kind === 'return-lost') return { ...base, watch: null, proof: line.when.provedBy };
  const { sensor, above, below } = line.when;
  const quantity = build.system.sensors.find((s) => s.key === sensor)?.quantity;
  // A flow sensor's low limit is the proof of flow itself.
  if (quantity === 'flow') return { ...base, watch: null, proof: 'flow' };
  const signal = signalOf(build.system, sensor, build.plant, build.places, build.upset);
  const high = above !== undefined;
  const at = (high ? above : below) ?? Number.NaN;
  const band = BAND[quantity ?? 'temperature'] ?? 0.1 * Math.abs(at);
  const w = watch('interlock', index, signal, high ? 1 : -1, at, high ? at - band : at + band);
  build.watches.push(w);
  return { ...base, watch: w, proof: 'flow' };
}

function flood(build: Build, resolved: ResolvedDevice, node: number, index: number): Device['flood'] {
  if (resolved.equipment.type !== 'skimmer' || node < 0) return null;
  const surface = build.plant.surface[node] as number;
  const from = (build.plant.runVolume[node] as number) + resolved.floodsAbove * surface;
  const w = watch('flood', index, linear(STRIDE * node), 1, from, from - 1e-9);
  build.watches.push(w);
  return { rate: resolved.floodPerM / surface, watch: w };
}

const NOT_REGULATED = {
  watch: null,
  minOnS: 0,
  minOffS: 0,
  runLimitS: Number.POSITIVE_INFINITY,
  runLimitSafeguard: null,
  fromS: 0,
  toS: 0,
};

function regulation(build: Build, resolved: ResolvedDevice, index: number): Regulated {
  const { regulation: line } = resolved.equipment.plan;
  switch (line.kind) {
    case 'always':
    case 'never':
      return { ...NOT_REGULATED, kind: line.kind };
    case 'hours':
      return { ...NOT_REGULATED, kind: 'hours', fromS: secondsOf(line.from), toS: secondsOf(line.to) };
    case 'thermostat':
      return {
        ...NOT_REGULATED,
        kind: 'watch',
        watch: thermostat(build, resolved, line, index),
        minOnS: line.minOnS ?? 0,
        minOffS: line.minOffS ?? 0,
      };
    case 'level': {
      const limited = line.runLimitMin !== undefined && line.by !== 'person' && build.credited(line.runLimitSafeguard);
      const signal = signalOf(build.system, line.sensor, build.plant, build.places, build.upset);
      return {
        ...NOT_REGULATED,
        kind: 'watch',
        watch: regulating(build, watch('regulation', index, signal, -1, line.lowMm, line.highMm), index),
        runLimitS: limited ? (line.runLimitMin ?? 0) * 60 : Number.POSITIVE_INFINITY,
        runLimitSafeguard: line.runLimitSafeguard ?? null,
      };
    }
  }
}

function thermostat(build: Build, resolved: ResolvedDevice, line: Thermostat, index: number): Watch {
  const signal = voted(
    line.sensors.map((key) => signalOf(build.system, key, build.plant, build.places, build.upset)),
    line.vote,
  );
  const cools = resolved.equipment.type === 'chiller';
  const shift = build.upset.setPointShift.get(resolved.equipment.key) ?? 0;
  const [low, high] = [line.lowC + shift, line.highC + shift];
  return regulating(
    build,
    watch('regulation', index, signal, cools ? 1 : -1, cools ? high : low, cools ? low : high),
    index,
  );
}

function regulating(build: Build, w: Watch, index: number): Watch {
  w.active = build.snapshot?.on[index] ?? false;
  build.watches.push(w);
  return w;
}
