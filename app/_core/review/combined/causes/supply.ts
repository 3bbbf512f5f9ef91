import type { Equipment } from '../../../facility/system';
import { faultPart } from '../combination';
import { asJudged, type Cause, type Common, failures } from './cause';
import type { Look } from '../look';

/** One electrical circuit, one RCD group, the utility, the utility with a generator that does not start. */
export const supply: Cause = (look) => {
  const { facility, system } = look;
  const site = facility.site.key;
  const behind = (rcd: string) => new Set(facility.circuits.filter((c) => c.rcd === rcd).map((c) => c.key));
  const rcds = [...new Set(facility.circuits.flatMap(({ rcd }) => rcd ?? []))];
  return [
    ...facility.circuits.flatMap(({ key, name }) =>
      stopping(look, `circuit-trips:${key}:normal`, (e) => e.circuit === key, `all hang on ${name}`),
    ),
    ...rcds.flatMap((rcd) => {
      const circuits = behind(rcd);
      const hangs = (e: Equipment) => e.circuit !== undefined && circuits.has(e.circuit);
      return stopping(look, `rcd-trips:${rcd}:normal`, hangs, `all hang behind the RCD (GFCI) ${rcd}`);
    }),
    ...stopping(look, `utility-fails:${site}:normal`, () => true, 'all hang on the utility'),
    ...stopping(look, `utility-fails-no-generator:${site}:normal`, () => true, 'all count on one generator'),
  ].filter(({ parts }) => parts.length <= system.equipment.length);
};

function stopping(look: Look, id: string, hangs: (e: Equipment) => boolean, because: string): Common[] {
  const stopped = failures(look, look.system.equipment.filter(hangs), 'dead');
  return asJudged(look, id, stopped.map(faultPart), stopped, because);
}
