import type { CaseTrajectory } from '#core/review/trajectory';
import type { System } from '#core/facility/system';
import { Course } from '../case/course';
import { WeekCover } from '../case/week-cover';
import { Fold } from '../frame/fold';
import { VerdictLine } from '../marks/verdict-line';
import type { Speech } from '../words/said';
import style from './document.module.css';
import { type Block, type FindingBlock, keyed, type Line, plainOf } from './block';
import { LineSaid, TableSaid } from './table-said';

/** What blocks are drawn with. */
export interface Drawn {
  system: System;
  speech: Speech;
  /** Courses at hand, by id of the fault case. */
  courses: Readonly<Record<string, CaseTrajectory>>;
  /** Whether this stands under the heading of a finding. */
  isUnder?: boolean;
}

/** Blocks of the document on a screen. */
export function Blocks({ blocks, drawn }: { blocks: readonly Block[]; drawn: Drawn }) {
  return keyed(blocks).map(({ key, block }) => <OneBlock key={key} block={block} drawn={drawn} />);
}

function OneBlock({ block, drawn }: { block: Block; drawn: Drawn }) {
  switch (block.kind) {
    case 'text':
      return (
        <p>
          <LineSaid line={block.says} />
        </p>
      );
    case 'heading':
      return drawn.isUnder ? <h4 className={style.under}>{block.says}</h4> : <h3>{block.says}</h3>;
    case 'list':
      return <Items {...block} />;
    case 'fold':
      return (
        <Fold title={block.title}>
          <Blocks blocks={block.blocks} drawn={drawn} />
        </Fold>
      );
    case 'verdicts':
      return (
        <VerdictLine
          claimed={{ verdict: block.claimed, befalls: block.befalls.claimed }}
          tested={{ verdict: block.tested, befalls: block.befalls.tested }}
          unsure={block.unsure}
        />
      );
    case 'table':
      return <TableSaid table={block} />;
    case 'finding':
      return <FindingEntry finding={block} drawn={drawn} />;
    case 'cover':
      return <WeekCover faultCase={block.faultCase} lanes={block.lanes} isBrief />;
    case 'course': {
      const trajectory = drawn.courses[block.faultCase.id];
      return trajectory ? <Course {...block} {...drawn} trajectory={trajectory} isBrief /> : null;
    }
  }
}

function Items({ items, numbered }: { items: Line[]; numbered?: boolean }) {
  const List = numbered ? 'ol' : 'ul';
  return (
    <List>
      {items.map((line) => (
        <li key={plainOf(line)}>
          <LineSaid line={line} />
        </li>
      ))}
    </List>
  );
}

function FindingEntry({ finding: { number, grade, says, blocks }, drawn }: { finding: FindingBlock; drawn: Drawn }) {
  return (
    <article className={style.finding}>
      <div className={style.rank}>
        <span className={style.number}>{number}</span>
        <span data-grade={grade} className={style.grade}>
          {grade}
        </span>
      </div>
      <div>
        <h3>{says}</h3>
        <Blocks blocks={blocks} drawn={{ ...drawn, isUnder: true }} />
      </div>
    </article>
  );
}
