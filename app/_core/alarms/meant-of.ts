import type { Equipment, System } from '../facility/system';
import type { Regulation } from '../plans/plan';
import { endsItself } from '../states/state-end';
import { MINUTE } from '../time/week';
import type { Meant, MeantBy } from './meant';

/**
 * When a piece of equipment is meant to run, by its plan.
 *
 * @returns `always` where nothing ever has it off
 */
export function meantOf(system: Pick<System, 'key' | 'states'>, { type, plan }: Equipment): Meant | 'always' {
  const { regulation, states, cutOuts, interlocks } = plan;
  const runsAlways = regulation.kind === 'always';
  if (runsAlways && states.every(({ then }) => then === 'on')) return 'always';
  // A state that a device begins and ends comes without anybody's saying so.
  const untold = (asked: 'on' | 'off') => states.some(({ state, then }) => then === asked && endsItself(system, state));
  const isLimited = regulation.kind === 'level' && regulation.runLimitMin !== undefined;
  const isLocked = cutOuts.length > 0 || interlocks.some(({ then }) => then === 'off') || isLimited;
  return {
    system: system.key,
    states: states.map(({ state, then }) => ({ state, then })),
    by: byOf(system.key, regulation, type),
    // What always runs is called for when it is held off, too: that is not how things are meant to stand.
    mayBeHeldOff: untold('off') || (!runsAlways && isLocked),
    mayBeHeldOn: untold('on') || interlocks.some(({ then }) => then === 'on'),
    lagS: regulation.kind === 'thermostat' ? Math.max(regulation.minOnS ?? 0, regulation.minOffS ?? 0) : 0,
  };
}

/** How regulation can be told from outside; of what a person does by hand it cannot. */
function byOf(system: string, regulation: Regulation, type: Equipment['type']): MeantBy | null {
  if (regulation.by === 'person') return null;
  switch (regulation.kind) {
    case 'always':
      return { kind: 'always', sensors: [] };
    case 'never':
      return null;
    case 'hours':
      return { kind: 'hours', fromS: secondsOf(regulation.from), toS: secondsOf(regulation.to), sensors: [] };
    case 'thermostat': {
      const { sensors, vote, lowC, highC } = regulation;
      const [onAt, offAt] = type === 'chiller' ? [highC, lowC] : [lowC, highC];
      return { kind: 'readings', sensors: sensors.map((key) => `${system}/${key}`), vote, ...beyond(onAt, offAt) };
    }
    case 'level': {
      const { sensor, lowMm, highMm } = regulation;
      return { kind: 'readings', sensors: [`${system}/${sensor}`], vote: 'single', ...beyond(lowMm, highMm) };
    }
  }
}

/**
 * Set-points beyond which it is clear: half the band past each, since what Holdfast reads may differ from what the controller
 * goes by. Common practice, no source.
 */
function beyond(onAt: number, offAt: number): { onAt: number; offAt: number } {
  const past = (offAt - onAt) / 2;
  return { onAt: onAt - past, offAt: offAt + past };
}

function secondsOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return (hours * 60 + minutes) * MINUTE;
}
