import 'server-only';
import type { TakenIn } from '../readings/file/take-in-file';
import { counted } from './said';

/** What came of a file, for a terminal. */
export function printTakenIn({ name, site, layout, outcome, sensors }: TakenIn): string {
  const nameOf = (id: string) => {
    const own = sensors.find((one) => one.id === id);
    return own ? `${own.system}/${own.key}` : id;
  };
  const { order } = outcome;
  const lines = [
    `${name} is taken in at ${site.name} (${site.key}) by the layout ${layout}: ${counted(outcome.rows, 'row')}, from ${outcome.from ?? '–'} to ${outcome.to ?? '–'}`,
    `${outcome.stored} stored, ${outcome.repeats} there already, ${outcome.conflicts} in conflict, ${outcome.refused} refused, ${outcome.missing} cells without a reading`,
    'what comes by file is of the past: none of it counts as late, and no alarm is held to it',
    ...outcome.sensors.map(
      (one) =>
        `  ${nameOf(one.sensor)}: ${one.stored} stored, ${one.repeats} there already, ${one.conflicts} in conflict, ${one.suspect} suspect, ${one.bad} bad`,
    ),
    ...(order.isNewestFirst ? ['newest first'] : []),
    ...(order.jumps > 0
      ? [`${counted(order.jumps, 'jump')} back in time, first at line ${order.jumpLines[0] ?? ''}`]
      : []),
    ...(order.skipped > 0
      ? [`${counted(order.skipped, 'row')} at a time that the clocks leapt over, put off by the leap`]
      : []),
    ...(order.repeated > 0
      ? [
          `${counted(order.repeated, 'row')} at a time that the clocks showed twice, ${order.second} taken for the second`,
        ]
      : []),
    ...outcome.firstConflicts.map(
      ({ line, sensor, at, value }) =>
        `line ${line}: ${nameOf(sensor)} at ${at} is ${value}, and another value is stored`,
    ),
    ...outcome.firstRefused.map(
      ({ line, place, says }) => `line ${line}${place === null ? '' : `, column ${place}`}: ${says}`,
    ),
  ];
  return `${lines.join('\n')}\n`;
}
