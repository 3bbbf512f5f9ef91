import { badSaid, changesSaid, originSaid, sourceSaid } from '#core/review/input-words';
import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { inputSaid, rangeSaid, unitOfInput } from '../../system/figure-said';
import type { Part, TableBlock } from '../block';
import { text } from '../block';
import type { DocumentData } from '../document-data';

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
      { id: 'value', head: 'Taken as' },
      { id: 'range', head: 'Plausible range' },
      { id: 'bad', head: 'Bad end' },
      { id: 'origin', head: 'Comes from' },
      { id: 'source', head: 'Source' },
      { id: 'confidence', head: 'Confidence' },
      { id: 'changes', head: 'Would change' },
    ],
    rows: inputs.map((input) => ({
      key: input.path,
      cells: [
        [input.name],
        [inputSaid(units, input.value, unitOfInput(input))],
        [rangeSaid(units, input)],
        [badSaid(input) || '–'],
        [originSaid(input)],
        [sourceSaid(input) || '–'],
        ['confidence' in input && typeof input.confidence === 'string' ? input.confidence : '–'],
        [changesSaid(input) || '–'],
      ],
    })),
  };
}
