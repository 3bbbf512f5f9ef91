import type { Facility } from '../facility';
import type { Path } from '../path';
import type { OwnLine } from '../../rounds/round-sheet';
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
  facility.sheets?.forEach(({ lines }, at) => {
    lines.forEach((line, index) => {
      if (line.kind !== 'described') checkOwnLine(facility, line, ['sheets', at, 'lines', index], scope, report);
    });
  });
  const { watchdog } = facility.site;
  if (watchdog) {
    checkAnsweredBy(watchdog.answeredBy, ['site', 'watchdog', 'answeredBy'], scope, report);
    report.safeguard(['site', 'watchdog', 'safeguard'], watchdog.safeguard, 'alarm', scope.safeguards);
  }
}

/** A line of a sheet's own is looked at in a system and at a tank that are there. */
function checkOwnLine(
  facility: Facility,
  { system, tank }: OwnLine,
  path: Path,
  scope: SiteScope,
  report: Report,
): void {
  if (system !== undefined) report.names([...path, 'system'], system, 'a system', scope.systems);
  if (tank === undefined) return;
  const tanks = facility.systems.find(({ key }) => key === system)?.tanks ?? [];
  report.names([...path, 'tank'], tank, 'a tank of its system', new Set(tanks.map(({ key }) => key)));
}

/** Those named to answer are people of this site. */
export function checkAnsweredBy(answeredBy: AnsweredBy, path: Path, scope: SiteScope, report: Report): void {
  if (typeof answeredBy !== 'string') report.namesEach(path, answeredBy, 'a person', scope.people);
}
