import { type Cause, failures, sharing, together } from './cause';

/** One reservoir: everything that draws from it stops when it is empty. */
export const reservoir: Cause = (look) =>
  sharing(look.system.equipment, (e) => (e.source === 'mains' ? undefined : e.source)).flatMap(([key, group]) => {
    const name = look.system.tanks.find((tank) => tank.key === key)?.name ?? key;
    return together(look, failures(look, group, 'dead'), `all draw from ${name}`);
  });
