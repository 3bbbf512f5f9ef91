import ts from 'typescript';
import { lineOf, walk } from './source';

/** Number of lines of a text. */
export const countLines = (text: string): number => text.split('\n').length - (text.endsWith('\n') ? 1 : 0);

/**
 * The value below which a part of the values lies (nearest rank).
 *
 * @param values  in any order, at least one
 * @param part    0 to 1
 */
export function quantile(values: number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const value = sorted[Math.max(0, Math.ceil(part * sorted.length) - 1)];
  if (value === undefined) throw new Error('A quantile of nothing was asked for.');
  return value;
}

/** A `describe` block is a heading over tests, not a function somebody has to hold in mind. */
function isHeading(node: ts.Node): boolean {
  const call = node.parent;
  return ts.isCallExpression(call) && /^(test\.)?describe\b/.test(call.expression.getText());
}

/** Every function of a file with its name, its first line, and its length in lines from signature to closing brace. */
export function functionLengths(source: ts.SourceFile): { name: string; line: number; lines: number }[] {
  const found: { name: string; line: number; lines: number }[] = [];
  walk(source, (node) => {
    if (!ts.isFunctionLike(node) || !('body' in node) || !node.body || isHeading(node)) return;
    const last = source.getLineAndCharacterOfPosition(node.getEnd()).line + 1;
    found.push({ name: nameOf(node), line: lineOf(node), lines: last - lineOf(node) + 1 });
  });
  return found;
}

function nameOf(node: ts.SignatureDeclaration): string {
  if (node.name) return node.name.getText();
  return ts.isVariableDeclaration(node.parent) ? node.parent.name.getText() : 'a function without a name';
}
