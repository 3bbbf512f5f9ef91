import type { Facility } from '../facility';
import type { Path } from '../path';
import type { AnsweredBy } from '../site';
import type { Report } from './report';
import { checkUnique, type SiteScope } from './scope';

/** Shifts, competences, rounds and the outside watch name people and systems that are there. */
export function checkPeople(facility: Facility, scope: SiteScope, report: Report): void {
  facility.shifts.forEach(({ people }, at) => {
    report.namesEach(['shifts', at, 'people'], people, 'a person', scope.people);
  });
  facility.people.forEach(({ competences = [] }, at) => {
    for (const [place, { competence: key }] of competences.entries())
      report.names(
        ['people', at, 'competences', place, 'competence'],
        key,
        'a competence of the site',
        scope.competences,
      );
  });
  checkUnique(facility.site.competences ?? [], ['site', 'competences'], report);
  facility.rounds.forEach(({ systems }, at) => {
    report.namesEach(['rounds', at, 'systems'], systems ?? [], 'a system', scope.systems);
  });
  const { watchdog } = facility.site;
  if (watchdog) {
    checkAnsweredBy(watchdog.answeredBy, ['site', 'watchdog', 'answeredBy'], scope, report);
    report.safeguard(['site', 'watchdog', 'safeguard'], watchdog.safeguard, 'alarm', scope.safeguards);
  }
}

/** Those named to answer are people of this site. */
export function checkAnsweredBy(answeredBy: AnsweredBy, path: Path, scope: SiteScope, report: Report): void {
  if (typeof answeredBy !== 'string') report.namesEach(path, answeredBy, 'a person', scope.people);
}
