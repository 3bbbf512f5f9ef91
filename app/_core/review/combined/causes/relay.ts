import { type Cause, failures, sharing, together } from './cause';

/** One relay board or controller: all its outputs drop out, or all stick. */
export const relay: Cause = (look) =>
  sharing(look.system.equipment, (e) => e.relay).flatMap(([name, group]) => [
    ...together(look, failures(look, group, 'dead'), `all are switched by ${name}, which drops out`),
    ...together(look, failures(look, group, 'stuck-on'), `all are switched by ${name}, whose contacts stick`),
  ]);
