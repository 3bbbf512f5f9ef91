import { lastTest } from '../plans/credit';
import type { Safeguard } from '../plans/safeguard';
import type { Context } from './context';
import { remedyText } from './remedies';
import type { FaultCase, Finding, Grade } from './result';
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
export function testGains(context: Context, cases: FaultCase[]): TestGain[] {
  const worse = cases.filter((c) => gravity(c.tested.verdict) < gravity(c.claimed.verdict));
  return untestedSafeguards(context)
    .map((safeguard) => ({ safeguard, cases: worse.filter((c) => leansOn(context, c, safeguard.key)) }))
    .sort((a, b) => b.cases.length - a.cases.length || (a.safeguard.key < b.safeguard.key ? -1 : 1));
}

/** The safeguard acted on the way, or is what made somebody know. */
function leansOn(context: Context, c: FaultCase, key: string): boolean {
  if (c.claimed.acted.includes(key)) return true;
  const heard = new Set(c.claimed.outcomes.flatMap((o) => o.noticeBy.map((n) => n.key)));
  const { watchdog } = context.facility.site;
  return (
    context.system.alarms.some((a) => a.safeguard === key && heard.has(a.key)) ||
    (watchdog?.safeguard === key && heard.has('watchdog'))
  );
}

/** One grouped finding for everything that is not tested; null when all is. */
export function untestedFinding(context: Context, cases: FaultCase[]): Finding | null {
  const gains = testGains(context, cases);
  if (gains.length === 0) return null;
  const lost = gains.flatMap((g) => g.cases);
  const grade =
    lost
      .map((c): Grade => (gradeOf(c.tested) === 'high' ? 'medium' : gradeOf(c.tested)))
      .sort((a, b) => gradeRank(a) - gradeRank(b))[0] ?? 'low';
  return {
    id: 'do:test-safeguards',
    grade,
    remedy: remedyText('test-safeguards'),
    title: `${gains.length} safeguards are counted on but not tested`,
    lines: gains.map(({ safeguard, cases: won }) => ({
      from: { rule: rule.id },
      cause: safeguard.name,
      consequence:
        won.length > 0
          ? `${won.length} fault cases are graver as tested than as claimed because of it.`
          : 'No fault case turns on it alone.',
      figures: [
        { name: 'last test', value: lastTest(safeguard, context.on)?.on ?? 'none' },
        { name: 'interval', value: `${safeguard.testEveryDays} days` },
        { name: 'cases won', value: String(won.length) },
      ],
      source: rule.source,
    })),
  };
}
