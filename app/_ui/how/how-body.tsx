import { allNotModelled } from '#core/review/not-modelled';
import { Section } from '../frame/section';
import { VerdictLegend } from '../marks/verdict-legend';
import { Almanac } from './almanac';
import assumptions from './assumptions.json';
import { Method } from './method';

/** Method, limits and assumptions, and the almanac of catalogues and tables, each with its sources. */
export function HowBody() {
  return (
    <>
      <Section id="limits" title="Limits" note="Read this first.">
        <p>
          <strong>Holdfast switches nothing and is not a protective device.</strong> It reads a description and
          computes; it cannot see whether the description is true.
        </p>
        <p>
          <strong>Treat a long margin as doubtful and a short one as true.</strong> The model is kind where it does not
          know: mixed water, able people, one fault at a time.
        </p>
        <p>Not modelled, though it can kill: {allNotModelled().join('; ')}.</p>
      </Section>
      <Section id="method" title="Method">
        <Method />
      </Section>
      <Section
        id="verdicts"
        title="Verdicts"
        note="The first that fits decides, in the order: not assessed, dormant, holds, no warning, too late, some hours, covered. Systems are listed gravest first, as here."
      >
        <VerdictLegend />
      </Section>
      <Section id="assumptions" title="Assumptions">
        <ul>
          {assumptions.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </Section>
      <Almanac />
    </>
  );
}
