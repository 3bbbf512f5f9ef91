import { asJudged, type Cause } from './cause';

/** One air line that feeds several tanks. */
export const airLine: Cause = (look) =>
  look.tried.flatMap(({ subject, case: c }) => {
    const blower = look.system.equipment.find(({ key }) => key === subject.thing.key);
    const tanks = [...new Set((blower?.stones ?? []).map(({ tank }) => tank))];
    if (c.fault !== 'air-stops' || subject.state !== 'normal') return [];
    const parts = tanks.map((tank) => ({
      kind: 'fault' as const,
      fault: c.fault,
      title: c.title,
      thing: {
        kind: 'tank' as const,
        key: tank,
        name: look.system.tanks.find(({ key }) => key === tank)?.name ?? tank,
      },
    }));
    return asJudged(look, c.id, parts, [], `one air line feeds them all, from ${subject.thing.name}`);
  });
