import { lastTest } from '../plans/credit';
import type { Safeguard } from '../plans/safeguard';
import type { Context } from './context';
import { remedyText } from './remedies';
import type { FaultCase, Finding, FindingLine, Grade } from './result';
import { gradeOf, gradeRank } from './findings';
import { rule, untestedSafeguards } from './rules/safeguard-untested';
import { gravity } from './verdict';

/** A safeguard that is counted on but not tested, with what testing it would win. */
export interface TestGain {
  safeguard: Safeguard;
  /** Fault cases whose verdict as tested is graver than as claimed, and that lean on it. */
  cases: FaultCase[];
}

/** Untested safeguards, most gain first: the order of the test calendar. */
function testGains(context: Context, cases: FaultCase[]): TestGain[] {
  const worse = cases.filter(isGraver);
  return untestedSafeguards(context)
    .map((safeguard) => ({ safeguard, cases: worse.filter((c) => leansOn(context, c, safeguard.key)) }))
    .sort((a, b) => b.cases.length - a.cases.length || (a.safeguard.key < b.safeguard.key ? -1 : 1));
}

/** Whether a case is graver as tested than as claimed, for the animals or for anything else. */
function isGraver({ claimed, tested }: FaultCase): boolean {
  return gravity(tested.verdict) < gravity(claimed.verdict) || gradeRank(gradeOf(tested)) < gradeRank(gradeOf(claimed));
}

/** The safeguard acted on the way, or is what made somebody know. */
export function leansOn(context: Context, c: FaultCase, key: string): boolean {
  if (c.claimed.acted.includes(key)) return true;
  const heard = new Set(c.claimed.outcomes.flatMap((o) => o.noticeBy.map((n) => n.key)));
  const { watchdog } = context.facility.site;
  return (
    context.system.alarms.some((a) => a.safeguard === key && heard.has(a.key)) ||
    (watchdog?.safeguard === key && heard.has('watchdog'))
  );
}

/** One grouped finding for everything that is counted on without a test; null when all is tested. */
export function untestedFinding(context: Context, cases: FaultCase[]): Finding | null {
  const gains = testGains(context, cases);
  // What is graver as tested and leans on no safeguard leans on a line or an alarm that names none.
  const unnamed = cases.filter((c) => isGraver(c) && !gains.some((g) => g.cases.includes(c)));
  if (gains.length === 0 && unnamed.length === 0) return null;
  const lost = [...gains.flatMap((g) => g.cases), ...unnamed];
  const grade =
    lost
      .map((c): Grade => (gradeOf(c.tested) === 'high' ? 'medium' : gradeOf(c.tested)))
      .sort((a, b) => gradeRank(a) - gradeRank(b))[0] ?? 'low';
  return {
    id: 'do:test-safeguards',
    grade,
    remedy: remedyText('test-safeguards'),
    title: titleOf(gains.length),
    lines: [...gains.map((gain) => lineOf(context, gain)), ...(unnamed.length > 0 ? [unnamedLine(unnamed)] : [])],
  };
}

function titleOf(n: number): string {
  if (n === 0) return 'What is counted on without a safeguard to test';
  return n === 1 ? 'A safeguard is counted on but not tested' : `${n} safeguards are counted on but not tested`;
}

function lineOf(context: Context, { safeguard, cases }: TestGain): FindingLine {
  return {
    from: { rule: rule.id },
    cause: safeguard.name,
    consequence: cases.length > 0 ? graver(cases.length, 'that lean on it') : 'No fault case turns on it.',
    figures: [
      { name: 'last test', value: lastTest(safeguard, context.on)?.on ?? 'none' },
      { name: 'interval', value: `${safeguard.testEveryDays} days` },
      { name: 'cases won', value: String(cases.length) },
    ],
    source: rule.source,
  };
}

function unnamedLine(cases: FaultCase[]): FindingLine {
  return {
    from: { rule: rule.id },
    cause: 'Interlocks, limits, siphon breaks, batteries or alarms that name no safeguard',
    consequence: `No test can prove them. ${graver(cases.length, 'that lean on them')}`,
    figures: [{ name: 'cases won', value: String(cases.length) }],
    source: rule.source,
  };
}

function graver(n: number, which: string): string {
  return `Fault cases ${which} and are graver as tested than as claimed: ${n}.`;
}
