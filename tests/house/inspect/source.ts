import ts from 'typescript';
import { readText } from './files';

/**
 * Source text as a syntax tree, with parents set.
 *
 * @param path  decides whether JSX is allowed; need not exist when `text` is given
 * @param text  the source; read from the file when left out
 */
export function parse(path: string, text = readText(path)): ts.SourceFile {
  const kind = /\.tsx$/.test(path) ? ts.ScriptKind.TSX : /\.mjs$/.test(path) ? ts.ScriptKind.JS : ts.ScriptKind.TS;
  return ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
}

/** Calls `visit` for every node of the tree, parents first. */
export function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  node.forEachChild((child) => walk(child, visit));
}

/** Line of a node in its file, counted from 1. */
export const lineOf = (node: ts.Node): number =>
  node.getSourceFile().getLineAndCharacterOfPosition(node.getStart()).line + 1;

/** Every comment of a file with its line, strings and templates that merely look like one left out. */
export function comments(source: ts.SourceFile): { line: number; text: string }[] {
  const found = new Map<number, string>();
  const collect = (ranges: ts.CommentRange[] | undefined): void => {
    for (const range of ranges ?? []) found.set(range.pos, source.text.slice(range.pos, range.end));
  };
  walk(source, (node) => {
    if (ts.isJsxText(node) || (node.parent && ts.isTemplateExpression(node.parent))) return;
    collect(ts.getLeadingCommentRanges(source.text, node.getFullStart()));
    collect(ts.getTrailingCommentRanges(source.text, node.getEnd()));
  });
  collect(ts.getLeadingCommentRanges(source.text, source.endOfFileToken.getFullStart()));
  return [...found].map(([at, text]) => ({ line: source.getLineAndCharacterOfPosition(at).line + 1, text }));
}

/** The first statement of a file as text, comments above it left out; empty for an empty file. */
export const firstStatement = (source: ts.SourceFile): string => source.statements[0]?.getText() ?? '';
