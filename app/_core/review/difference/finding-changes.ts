import { gradeRank } from '../findings';
import type { Finding, FindingLine, Grade } from '../result';

/** One finding that comes, goes, or has other causes than before. */
export interface FindingChange {
  id: string;
  remedy: string;
  title: string;
  /** Null on the side that has no such finding. */
  before: Grade | null;
  after: Grade | null;
  /** Causes that come, and causes that go. */
  come: FindingLine[];
  go: FindingLine[];
}

/**
 * Findings that come, go, or have other causes. What a cause leads to may be put in other figures without being told: that
 * is told of the fault case.
 *
 * @returns   findings that come first, then those that change, then those that go; within each, the most urgent first
 */
export function findingChanges(before: readonly Finding[], after: readonly Finding[]): FindingChange[] {
  const was = new Map(before.map((one) => [one.id, one]));
  const is = new Map(after.map((one) => [one.id, one]));
  const ids = [...new Set([...is.keys(), ...was.keys()])];
  return ids
    .flatMap((id) => changeOf(was.get(id), is.get(id)))
    .sort((a, b) => wayRank(a) - wayRank(b) || gradeOf(a) - gradeOf(b));
}

function changeOf(was: Finding | undefined, is: Finding | undefined): FindingChange[] {
  const named = is ?? was;
  if (!named) return [];
  const come = left(is?.lines ?? [], was?.lines ?? []);
  const go = left(was?.lines ?? [], is?.lines ?? []);
  const [before, after] = [was?.grade ?? null, is?.grade ?? null];
  if (before === after && come.length === 0 && go.length === 0) return [];
  return [{ id: named.id, remedy: named.remedy, title: named.title, before, after, come, go }];
}

/** Lines of one side that the other has not, each counted as often as it stands there. */
function left(lines: readonly FindingLine[], others: readonly FindingLine[]): FindingLine[] {
  const held = new Map<string, number>();
  for (const line of others) held.set(nameOf(line), (held.get(nameOf(line)) ?? 0) + 1);
  return lines.filter((line) => {
    const count = held.get(nameOf(line)) ?? 0;
    held.set(nameOf(line), count - 1);
    return count <= 0;
  });
}

function nameOf({ from, cause }: FindingLine): string {
  return `${'case' in from ? `case ${from.case}` : `rule ${from.rule}`}\n${cause}`;
}

function wayRank({ before, after }: FindingChange): number {
  return before === null ? 0 : after === null ? 2 : 1;
}

function gradeOf({ before, after }: FindingChange): number {
  return Math.min(...[before, after].flatMap((grade) => (grade ? [gradeRank(grade)] : [])));
}
