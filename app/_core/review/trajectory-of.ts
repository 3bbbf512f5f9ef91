import type { FaultCase } from './result';
import type { CaseTrajectory, Moment, Track } from './trajectory';
import { HORIZON, type Context } from './context';
import { type Subject, type Trial, tryAt } from './trial';
import { levelSignal } from '../simulate/build-signals';
import { salinity } from '../simulate/signal';
import { OXYGEN, STRIDE, TEMPERATURE } from '../simulate/plant';
import type { Column } from '../plans/credit';
import { namedHarm } from './named-harm';
import { harmWords, worstHour } from './words';

/** Points of a plotted line. */
const POINTS = 240;

/**
 * The course of one fault case when nobody comes, from its worst hour, ready to draw.
 * @param c the case as judged; null onset when it leads to no harm begins on Monday 02:00
 */
export function trajectoryOf(context: Context, subject: Subject, c: FaultCase, column: Column): CaseTrajectory {
  const [outcome] = c[column].outcomes;
  const onsetHour = outcome ? worstHour(outcome) : 2;
  const view = context.view('nominal');
  const trial = tryAt(context, view, subject, column, onsetHour % 24);
  const endS = Math.min(HORIZON, Math.max(3600, trial.record.endS));
  const moments: Moment[] = [{ kind: 'begins', atS: 0, label: c.title }];
  const add = (kind: Moment['kind'], atS: number | null | undefined, label: string) => {
    if (atS !== null && atS !== undefined && atS <= endS) moments.push({ kind, atS, label });
  };
  if (outcome) {
    add('noticed', outcome.noticeS[onsetHour], `noticed (${outcome.noticeBy[onsetHour]?.by ?? ''})`);
    add('last-chance', outcome.lastChanceS[onsetHour], 'last chance');
    add('put-right', outcome.putRightS[onsetHour], 'put right, if the rota holds');
  }
  for (const harm of trial.record.harms) add('harm', harm.atS, harmWords(namedHarm(context.system.tanks, harm)));
  for (const event of trial.record.events) add('event', event.t, event.what);
  return { onsetHour, endS, tracks: tracksOf(trial, endS), moments: moments.sort((a, b) => a.atS - b.atS) };
}

function tracksOf(trial: Trial, endS: number): Track[] {
  const { machine } = trial;
  const times = Array.from({ length: POINTS + 1 }, (_, i) => (endS * i) / POINTS);
  return machine.nodes.flatMap((node, k) => {
    if (!machine.stocked[k] && k !== machine.plant.hub) return [];
    const at = (index: number) => times.map((t) => trial.record.knots.between(trial.record.knots.before(t), index, t));
    const volume = at(STRIDE * k);
    const salt = at(STRIDE * k + 2);
    const level = levelSignal(machine.plant, k);
    const perKg = salinity(k, machine.plant.density).scale;
    const limits = (quantity: Track['quantity']) =>
      machine.limits
        .filter((l) => l.node === k && l.what === quantity)
        .map((l) => ({ quantity: quantity, value: l.limit, direction: l.direction, forMin: l.forS / 60 }));
    const track = (quantity: Track['quantity'], values: number[]): Track => ({
      tank: node.key,
      quantity,
      timesS: times,
      values,
      limits: limits(quantity),
    });
    return [
      track('temperature', at(STRIDE * k + TEMPERATURE)),
      track('oxygen', at(STRIDE * k + OXYGEN)),
      track(
        'salinity',
        volume.map((v, i) => (perKg * (salt[i] ?? 0)) / v),
      ),
      track(
        'level',
        volume.map((v) => level.scale * v + level.offset),
      ),
    ];
  });
}
