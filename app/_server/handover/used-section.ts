import 'server-only';
import type { ShownLine } from '#core/handover/shown';
import { beyondRate, type UsedRate } from '#core/rounds/rate';
import { rateSaid } from '#core/rounds/read/used';
import type { UsedLine } from '#core/rounds/used-lines';
import { iso, line } from './sections';

/** What is used more or less than usual. What is kept holds litres: it says the same to everybody. @param nameOf name of a system by its key */
export function usedSection(
  use: readonly { line: UsedLine; rate: UsedRate | null }[],
  nameOf: (key: string) => string,
): ShownLine[] {
  return use.flatMap(({ line: check, rate }) => {
    const beyond = beyondRate(rate);
    if (!rate || beyond === null) return [];
    const { system } = check.about;
    const bound = (beyond === 'above' ? rate.usual?.to : rate.usual?.from) ?? rate.perDay;
    return [
      line(check.what, {
        where: system === null ? null : nameOf(system),
        more: `${rateSaid(check, 'metric', rate.perDay)}, ${beyond} ${rateSaid(check, 'metric', bound)}, which is usual`,
        since: iso(rate.atMs),
        isAbnormal: true,
      }),
    ];
  });
}
