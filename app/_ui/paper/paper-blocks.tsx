import { Text, View } from '@react-pdf/renderer';
import type { System } from '#core/facility/system';
import type { CaseTrajectory } from '#core/review/trajectory';
import { type Block, type FindingBlock, keyed, type Line } from '../document/block';
import type { Speech } from '../words/said';
import { PaperCourse } from './paper-course';
import { PaperCover } from './paper-cover';
import { PaperLine } from './paper-line';
import { PaperTable } from './paper-table';
import { sheet } from './sheet';

/** What blocks are drawn with. */
export interface OnPaper {
  system: System;
  speech: Speech;
  /** Courses at hand, by id of the fault case. */
  courses: Readonly<Record<string, CaseTrajectory>>;
}

/** Blocks of the document on paper, every fold open. */
export function PaperBlocks({ blocks, paper }: { blocks: readonly Block[]; paper: OnPaper }) {
  return keyed(blocks).map(({ key, block }) => <OneBlock key={key} block={block} paper={paper} />);
}

function OneBlock({ block, paper }: { block: Block; paper: OnPaper }) {
  switch (block.kind) {
    case 'text':
      return (
        <Text style={sheet.text}>
          <PaperLine line={block.says} />
        </Text>
      );
    case 'heading':
      return (
        <Text style={sheet.heading} minPresenceAhead={40}>
          {block.says}
        </Text>
      );
    case 'list':
      return block.items.map((line, i) => (
        <Item key={`${String(i)} ${line.length}`} line={line} bullet={block.numbered ? `${i + 1}.` : '–'} />
      ));
    case 'fold':
      return (
        <>
          <Text style={sheet.heading} minPresenceAhead={40}>
            {block.title}
          </Text>
          <PaperBlocks blocks={block.blocks} paper={paper} />
        </>
      );
    case 'verdicts':
      return <Verdicts block={block} />;
    case 'table':
      return <PaperTable table={block} />;
    case 'finding':
      return <Finding finding={block} paper={paper} />;
    case 'cover':
      return <PaperCover block={block} />;
    case 'course': {
      const trajectory = paper.courses[block.faultCase.id];
      return trajectory ? <PaperCourse block={block} trajectory={trajectory} {...paper} /> : null;
    }
  }
}

function Item({ line, bullet }: { line: Line; bullet: string }) {
  return (
    <View style={sheet.item} wrap={false}>
      <Text style={sheet.bullet}>{bullet}</Text>
      <Text style={sheet.itemText}>
        <PaperLine line={line} />
      </Text>
    </View>
  );
}

function Verdicts({ block: { claimed, tested, befalls, unsure } }: { block: Extract<Block, { kind: 'verdicts' }> }) {
  return (
    <Text style={sheet.text}>
      {'As claimed: '}
      <PaperLine line={[{ verdict: claimed, befalls: befalls.claimed, unsure }]} />
      {'    As tested: '}
      <PaperLine line={[{ verdict: tested, befalls: befalls.tested }]} />
    </Text>
  );
}

/** A finding: its title stays with what comes first beneath it. */
function Finding({ finding: { number, grade, says, blocks }, paper }: { finding: FindingBlock; paper: OnPaper }) {
  // What does not fit on a sheet must be free to run on.
  const held = blocks[0]?.kind === 'text' ? 1 : 0;
  return (
    <>
      <View wrap={false}>
        <View style={sheet.findingRule} />
        <View style={sheet.findingHead}>
          <View style={sheet.rank}>
            <Text style={sheet.number}>{number}</Text>
            <Text>{grade}</Text>
          </View>
          <Text style={sheet.findingTitle}>{says}</Text>
        </View>
        <PaperBlocks blocks={blocks.slice(0, held)} paper={paper} />
      </View>
      <PaperBlocks blocks={blocks.slice(held)} paper={paper} />
    </>
  );
}
