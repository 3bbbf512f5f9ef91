import { coursesOf } from '../courses';
import type { Look } from '../combined/look';
import { gravestOutcome } from '../gravest';
import { judgementOf } from '../judgement';
import { untestedSafeguards } from '../rules/safeguard-untested';
import type { Fix } from '../study';
import { leansOn } from '../untested';
import { changesOf, compareWorth, effectsOf, worth } from './effects';
import { titled } from './stand';
import { caseTitle } from '../words';

/**
 * What the test of each untested safeguard would win, in the tested column: the cases that are graver as tested and lean on it,
 * judged with it proved.
 * @returns most won first; those that win nothing alone are left out
 */
export function testFixes(look: Look): Fix[] {
  const graver = look.tried.filter(({ case: c }) => gravestOutcome(c.tested).rank < gravestOutcome(c.claimed).rank);
  const cases = new Map(
    graver.map(({ subject, case: c }) => [c.id, { subject, title: caseTitle(titled(subject)), judgement: c.tested }]),
  );
  return untestedSafeguards(look.context)
    .map(({ key, name }) => {
      const context = { ...look.context, credit: { ...look.context.credit } };
      context.credit.tested = (asked) => asked === key || look.context.credit.tested(asked);
      const view = { ...look.view, standing: new Map(), told: new Map() };
      const after = new Map(
        graver
          .filter(({ case: c }) => leansOn(look.context, c, key))
          .map(({ subject, case: c }) => {
            const courses = coursesOf(context, view, subject, 'tested');
            const judgement = judgementOf(context, view, subject, courses, 'tested');
            return [c.id, { subject, title: c.title, judgement }];
          }),
      );
      const changes = changesOf({ cases }, after);
      const fix: Fix = {
        id: `test-safeguards:${key}`,
        remedy: 'test-safeguards',
        column: 'tested',
        title: `A test of ${name} that works`,
        wins: effectsOf(changes, 1),
        losses: effectsOf(changes, -1),
      };
      return { fix, value: worth(changes) };
    })
    .filter(({ fix }) => fix.wins.length > 0)
    .sort((a, b) => compareWorth(b.value, a.value) || (a.fix.id < b.fix.id ? -1 : 1))
    .map(({ fix }) => fix);
}
