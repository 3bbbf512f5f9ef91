import ts from 'typescript';
import { comments, lineOf, walk } from './source';

const RUNNERS = new Set(['test', 'it', 'describe', 'suite', 'bench']);
const LEFT_OUT = new Set(['skip', 'only', 'todo', 'fixme', 'fails', 'fail', 'skipIf', 'runIf']);
const OLD_NAMES = new Set(['xit', 'xtest', 'xdescribe', 'fit', 'fdescribe']);

/** Calls that leave a test out, or leave all others out, one line of words each. */
export function leftOut(source: ts.SourceFile): string[] {
  const found: string[] = [];
  walk(source, (node) => {
    const bare = ts.isCallExpression(node) && ts.isIdentifier(node.expression) && OLD_NAMES.has(node.expression.text);
    const dotted = ts.isPropertyAccessExpression(node) && LEFT_OUT.has(node.name.text) && isRunner(node.expression);
    if (bare || dotted) found.push(`${source.fileName}:${lineOf(node)} ${node.getText().split('(')[0]}`);
  });
  return found;
}

function isRunner(node: ts.Expression): boolean {
  if (ts.isIdentifier(node)) return RUNNERS.has(node.text);
  return ts.isPropertyAccessExpression(node) && isRunner(node.expression);
}

/** Marks of work put off, and orders to a checker to look away. In pieces, so that this file holds none of them. */
const PUT_OFF = new RegExp(
  `\\b(${['TO', 'FIX', 'XX', 'HA'].map((word, at) => word + ['DO', 'ME', 'X', 'CK'][at]).join('|')})\\b`,
);
const LOOK_AWAY = new RegExp(
  ['eslint', 'biome', 'prettier', 'istanbul', 'c8', 'v8', 'knip', 'depcruise']
    .map((tool) => `${tool}[- ](disable|ignore)`)
    .concat(['@ts-(ignore|nocheck|expect-error)'])
    .join('|'),
);

/** Comments that put work off or tell a checker to look away, one line of words each. */
export function badComments(source: ts.SourceFile): string[] {
  return comments(source)
    .filter(({ text }) => PUT_OFF.test(text) || LOOK_AWAY.test(text))
    .map(({ line, text }) => `${source.fileName}:${line} ${text.split('\n')[0]}`);
}
