import type { Facility } from '../facility';
import type { Path } from '../path';
import type { AnsweredBy } from '../site';
import type { Report } from './report';
import type { SiteScope } from './scope';

/** Shifts, rounds and the outside watch name people and systems that are there. */
export function checkPeople(facility: Facility, scope: SiteScope, report: Report): void {
  facility.shifts.forEach(({ people }, at) => {
    report.namesEach(['shifts', at, 'people'], people, 'a person', scope.people);
  });
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
