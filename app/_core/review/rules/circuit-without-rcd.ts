import { changed, example, withSite } from './example/example';
import type { Rule } from './rule';

/** A circuit that feeds equipment in the water and names no RCD. */
export const rule: Rule = {
  id: 'circuit-without-rcd',
  title: 'A circuit names no RCD group',
  why: 'Either nothing protects people from a cracked heater in the water, or it is not known what trips together.',
  source: 'Equipment in water behind an RCD; common practice, no source; a qualified electrician decides',
  grade: 'low',
  remedy: 'name-rcd',
  check: ({ facility, system }) =>
    facility.circuits
      .filter(({ key, rcd }) => rcd === undefined && system.equipment.some(({ circuit }) => circuit === key))
      .map(({ key, name }) => ({
        cause: name,
        consequence: 'What trips together with it is not known.',
        figures: [
          { name: 'equipment on it', value: `${system.equipment.filter(({ circuit }) => circuit === key).length}` },
        ],
      })),
  passing: () => example(),
  failing: () => example(withSite(({ circuits }) => ({ circuits: changed(circuits, 'heat', { rcd: undefined }) }))),
};
