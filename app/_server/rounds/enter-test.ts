import 'server-only';
import type { Check } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import { ok, refused } from '#core/result';
import { news } from '#data/news';
import type { EnterRequest } from '#shape/rounds/requests';
import { SITE_ITSELF } from '#shape/safeguards/requests';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { changeSafeguard } from '../safeguards/change-safeguard';
import { keepTest } from '../safeguards/keep-test';
import { hold, type RoundChanged } from './change-round';
import { keepEntry } from './keep-entry';

/**
 * Records the test of a safeguard that was done on a round: in its ledger and on the sheet, or in neither. A test that stands is
 * withdrawn where the safeguard is, with its reason; the sheet keeps what was seen.
 */
export async function enterTest(
  who: Who,
  typed: EnterRequest,
  check: Check,
  value: Extract<EntryValue, { kind: 'test' }>,
): Promise<RoundChanged> {
  const found = await siteFor(who, 'walk', typed.site);
  if (!found.ok) return found;
  const site = found.value;
  const place = { site: site.key, system: check.about.system ?? SITE_ITSELF, safeguard: check.about.key };
  const { entry, steps = '', expected = '', found: seen = '' } = typed;
  const done = await changeSafeguard(who, 'test-safeguard', place, async (safeguard) => {
    const { tx, at, today } = safeguard;
    const held = await hold(tx, site, typed.round, at);
    if (!held) return refused({ why: 'not-found', what: 'round' });
    if (held.standing.get(check.key)?.value && typed.supersedes !== undefined)
      return refused({
        why: 'conflict',
        now: 'A test is withdrawn on the page of its safeguard, with a reason; the sheet keeps what was seen.',
      });
    const kept = await keepEntry(held, who, { typed, check, value });
    if (!kept.ok) return kept;
    const test = { entry, on: today, result: value.result, steps, expected, seen, looked: who.name };
    const tested = await keepTest(safeguard, who, test);
    await news(tx, site.id, 'rounds');
    return ok([...tested, ...kept.value]);
  });
  return done.ok ? ok({ site: site.key, round: typed.round }) : done;
}
