import { Text } from '@react-pdf/renderer';
import type { HarmClass } from '#core/review/result';
import { VERDICT_WORDS } from '#core/review/words';
import type { Line } from '../document/block';
import { sheet, VERDICT_SIGNS } from './sheet';

const BEFALLS: Record<HarmClass, string> = { animals: '', floor: ', floor', equipment: ', pump' };

/** A line on paper: links by their words alone, verdicts by shape and word. */
export function PaperLine({ line }: { line: Line }) {
  return line.map((piece, i) => {
    const key = `${typeof piece} ${String(i)}`;
    if (typeof piece === 'string') return piece;
    if ('strong' in piece)
      return (
        <Text key={key} style={sheet.strong}>
          {piece.strong}
        </Text>
      );
    if ('link' in piece) return piece.says;
    const { verdict, befalls, unsure } = piece;
    return `${VERDICT_SIGNS[verdict]} ${VERDICT_WORDS[verdict]}${befalls ? BEFALLS[befalls] : ''}${unsure ? ', unsure' : ''}`;
  });
}
