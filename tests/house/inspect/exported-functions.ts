import ts from 'typescript';
import { lineOf } from './source';

/** A function others may call, with what its docstring says; the docstring is empty when there is none. */
export interface ExportedFunction {
  name: string;
  line: number;
  /** Text between the comment marks, leading stars stripped. */
  docstring: string;
  parameters: { name: string; isNumber: boolean }[];
  returnsNumber: boolean;
}

/** Every function a file exports: declared, or held by a constant. */
export function exportedFunctions(source: ts.SourceFile): ExportedFunction[] {
  return source.statements.filter(isExported).flatMap((statement) => {
    if (ts.isFunctionDeclaration(statement)) return [readOf(statement.name?.text ?? 'default', statement, statement)];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
      initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))
        ? [readOf(name.getText(), initializer, statement)]
        : [],
    );
  });
}

function isExported(statement: ts.Statement): boolean {
  const modifiers = ts.canHaveModifiers(statement) ? ts.getModifiers(statement) : undefined;
  return modifiers?.some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword) ?? false;
}

function readOf(name: string, node: ts.SignatureDeclaration, holder: ts.Statement): ExportedFunction {
  return {
    name,
    line: lineOf(holder),
    docstring: docstringOf(holder),
    parameters: node.parameters.map((parameter) => ({
      name: parameter.name.getText(),
      isNumber: speaksOfNumber(parameter.type),
    })),
    returnsNumber: speaksOfNumber(node.type),
  };
}

const speaksOfNumber = (type: ts.TypeNode | undefined): boolean => /^number\b/.test(type?.getText() ?? '');

function docstringOf(holder: ts.Statement): string {
  const text = holder.getSourceFile().text;
  const blocks = (ts.getLeadingCommentRanges(text, holder.getFullStart()) ?? [])
    .map(({ pos, end }) => text.slice(pos, end))
    .filter((block) => block.startsWith('/**'));
  const stripped = (blocks.at(-1) ?? '').replace(/^\/\*\*|\*\/$/g, '').replace(/^[ \t]*\*( |$)/gm, '');
  return stripped.trim();
}
