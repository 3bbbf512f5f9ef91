import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { inputSaid, rangeSaid } from '../../system/figure-said';
import type { Part, TableBlock } from '../block';
import { text } from '../block';
import type { DocumentData } from '../document-data';

/** Origins that stand where a source would: nobody filled these in. */
const GIVEN = new Set(['entered', 'measured']);

/** What was filled in by default or carries a plausible range, with source and confidence. */
export function inputsPart({ review, speech }: DocumentData): Part {
  const { inputs, askNext } = review;
  const first = inputs.find(({ path }) => path === askNext);
  return {
    id: 'inputs',
    title: 'Figures that were filled in',
    wide: true,
    note: `${inputs.length} figures are defaults or carry a plausible range.`,
    blocks: [
      ...(first
        ? [text({ strong: `${first.name} ` }, 'is the one to find out first: it alone would change a grave verdict.')]
        : []),
      { kind: 'fold', title: 'All of them, with source and confidence', blocks: [table(inputs, speech.units)] },
    ],
  };
}

function table(inputs: readonly OpenInput[], units: Custom): TableBlock {
  return {
    kind: 'table',
    caption: 'Every verdict is computed at the value; the range, on its bad side, decides whether it is unsure.',
    columns: [
      { id: 'name', head: 'Figure' },
      { id: 'value', head: 'Taken as', figure: true },
      { id: 'range', head: 'Plausible range', figure: true },
      { id: 'source', head: 'Comes from' },
      { id: 'confidence', head: 'Confidence' },
    ],
    rows: inputs.map((input) => ({
      key: input.path,
      cells: [
        [input.name],
        [inputSaid(units, input.value, input.unit)],
        [rangeSaid(units, input)],
        [GIVEN.has(input.source) ? input.source : `default: ${input.source}`],
        ['confidence' in input && typeof input.confidence === 'string' ? input.confidence : '–'],
      ],
    })),
  };
}
