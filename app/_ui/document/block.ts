import type { Grade, FaultCase, HarmClass, Verdict } from '#core/review/result';
import type { Column } from '#core/plans/credit';
import { VERDICT_WORDS } from '#core/review/words';
import type { RotaLanes } from '../case/rota-lanes';

/** A piece of a line: plain text, a stressed one, a link, or a verdict with its shape. */
export type Piece =
  | string
  | { strong: string }
  | { link: string; says: string }
  | { verdict: Verdict; befalls?: HarmClass; unsure?: boolean };

/** A line of text. */
export type Line = readonly Piece[];

/** One column of a table; the first heads its row. */
export interface TableColumn {
  id: string;
  head: string;
  /** Figures stand to the right. */
  figure?: boolean;
}

/** A ruled table. */
export interface TableBlock {
  kind: 'table';
  caption: string;
  columns: TableColumn[];
  /** One cell for each column. */
  rows: { key: string; cells: Line[] }[];
}

/** The course of a fault case when nobody comes, to be plotted. */
export interface CourseBlock {
  kind: 'course';
  faultCase: FaultCase;
  column: Column;
}

/** Time to spare through the week, to be drawn. */
export interface CoverBlock {
  kind: 'cover';
  faultCase: FaultCase;
  lanes: RotaLanes;
}

/** A finding: what to do, with what asks for it beneath. */
export interface FindingBlock {
  kind: 'finding';
  id: string;
  number: number;
  grade: Grade;
  says: string;
  blocks: Block[];
}

/**
 * What the review is made of as a document. It is put together once, and shown by a screen and by paper, which therefore say
 * the same.
 */
export type Block =
  | { kind: 'text'; says: Line }
  | { kind: 'heading'; says: string }
  | { kind: 'list'; items: Line[]; numbered?: boolean }
  | { kind: 'fold'; title: string; blocks: Block[] }
  | {
      kind: 'verdicts';
      claimed: Verdict;
      tested: Verdict;
      befalls: Partial<Record<Column, HarmClass>>;
      unsure: boolean;
    }
  | TableBlock
  | FindingBlock
  | CoverBlock
  | CourseBlock;

/** A section of the document. */
export interface Part {
  /** Anchor, unique on the page. */
  id: string;
  title: string;
  note?: string;
  /** The content takes the whole width. */
  wide?: boolean;
  blocks: Block[];
}

/** A line of plain text. */
export function text(...says: Piece[]): Block {
  return { kind: 'text', says };
}

/** A line without its marks and links, as plain words. */
export function plainOf(line: Line): string {
  return line
    .map((piece) => {
      if (typeof piece === 'string') return piece;
      if ('strong' in piece) return piece.strong;
      return 'link' in piece ? piece.says : VERDICT_WORDS[piece.verdict];
    })
    .join('');
}

/** Blocks with what tells each from the others beside it: its kind, and the how manieth of it. */
export function keyed(blocks: readonly Block[]): { key: string; block: Block }[] {
  const seen = new Map<string, number>();
  return blocks.map((block) => {
    const count = (seen.get(block.kind) ?? 0) + 1;
    seen.set(block.kind, count);
    return { key: `${block.kind} ${count}`, block };
  });
}
