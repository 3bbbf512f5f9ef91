import { dirname, join } from 'node:path';
import ts from 'typescript';

/** Whether the first words of a file say that it belongs to the browser. */
export function isClient(source: ts.SourceFile): boolean {
  const [first] = source.statements;
  return (
    first !== undefined &&
    ts.isExpressionStatement(first) &&
    ts.isStringLiteral(first.expression) &&
    first.expression.text === 'use client'
  );
}

/** Functions and values (not components, not types) that files of the browser give to files that may run on the server. */
export function borrowed(sources: readonly ts.SourceFile[]): string[] {
  const given = new Set(sources.filter(isClient).map((source) => withoutEnding(source.fileName)));
  return sources
    .filter((source) => !isClient(source))
    .flatMap((source) =>
      source.statements.filter(ts.isImportDeclaration).flatMap((line) => {
        const from = ts.isStringLiteral(line.moduleSpecifier) ? line.moduleSpecifier.text : '';
        const names = line.importClause?.namedBindings;
        if (!given.has(pathOf(source, from)) || line.importClause?.isTypeOnly) return [];
        if (!names || !ts.isNamedImports(names)) return [];
        const values = names.elements.filter((one) => !one.isTypeOnly && /^[a-z]/.test(one.name.text));
        return values
          .filter((one) => !one.name.text.startsWith('use'))
          .map((one) => `${source.fileName} calls ${one.name.text} of ${from}`);
      }),
    );
}

/** The file that an import means, without its ending; of those of another room, only looks matter. */
function pathOf(source: ts.SourceFile, from: string): string {
  return from.startsWith('#ui/') ? from.replace('#ui/', 'app/_ui/') : join(dirname(source.fileName), from);
}

function withoutEnding(path: string): string {
  return path.replace(/\.tsx?$/, '');
}
