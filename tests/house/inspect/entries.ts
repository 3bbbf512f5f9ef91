import ts from 'typescript';
import { lineOf, walk } from './source';

/** What of the gate makes an entry of a use case, by the module it comes from. */
const MAKERS: Record<string, string[]> = {
  '#server/gate/ask': ['ask'],
  '#server/gate/act': ['act'],
  '#server/gate/handle': ['handle'],
  '#server/gate/handle-sent': ['handleSent'],
  '#server/gate/open': ['actOpenly', 'askOpenly', 'handleOpenly'],
};
/** What of the gate words an answer, and asks nothing. */
const WORDING = ['refusalWords'];

/** Names a file imports as values from the server side, and those of them that make entries. */
function namesOf(source: ts.SourceFile): { makers: Set<string>; others: Set<string> } {
  const makers = new Set<string>();
  const others = new Set<string>();
  for (const statement of source.statements) {
    if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) continue;
    const { importClause: clause, moduleSpecifier } = statement;
    if (!clause || clause.isTypeOnly || !moduleSpecifier.text.startsWith('#server/')) continue;
    const { name, namedBindings } = clause;
    if (name) others.add(name.text);
    if (namedBindings && ts.isNamespaceImport(namedBindings)) others.add(namedBindings.name.text);
    if (!namedBindings || !ts.isNamedImports(namedBindings)) continue;
    for (const one of namedBindings.elements.filter((element) => !element.isTypeOnly)) {
      const called = (one.propertyName ?? one.name).text;
      if (MAKERS[moduleSpecifier.text]?.includes(called)) makers.add(one.name.text);
      else if (!WORDING.includes(called)) others.add(one.name.text);
    }
  }
  return { makers, others };
}

/** Whether a node is a call of something that makes entries, or of a name given. */
const isCallOf = (node: ts.Node, names: ReadonlySet<string>): boolean =>
  ts.isCallExpression(node) && ts.isIdentifier(node.expression) && names.has(node.expression.text);

/**
 * What of the server side a file uses otherwise than by handing it to the gate. Only the gate asks who is there, reads what
 * they sent, and whether they may.
 *
 * @returns   each name as often as it is used past the gate
 */
export function pastTheGate(source: ts.SourceFile): { name: string; line: number }[] {
  const { makers, others } = namesOf(source);
  const found: { name: string; line: number }[] = [];
  walk(source, (node) => {
    const line = lineOf(node);
    if (isDynamicImport(node)) found.push({ name: node.getText(), line });
    if (ts.isExportDeclaration(node) && node.moduleSpecifier?.getText().includes('#server/'))
      found.push({ name: node.getText(), line });
    if (!ts.isIdentifier(node) || !others.has(node.text) || isWithin(node, ts.isImportDeclaration)) return;
    const isHanded = isWithin(
      node,
      (above, from) => isCallOf(above, makers) && (above as ts.CallExpression).expression !== from,
    );
    if (!isHanded && !isPropertyName(node)) found.push({ name: node.text, line });
  });
  return found;
}

const isDynamicImport = (node: ts.Node): boolean =>
  ts.isCallExpression(node) &&
  node.expression.kind === ts.SyntaxKind.ImportKeyword &&
  (node.arguments[0]?.getText().includes('#server/') ?? false);

/** A name that merely looks like the import: of a property, or of an attribute. */
const isPropertyName = ({ parent, text }: ts.Identifier): boolean =>
  (ts.isPropertyAccessExpression(parent) && parent.name.text === text && parent.expression.getText() !== text) ||
  (ts.isPropertyAssignment(parent) && parent.name.getText() === text && parent.initializer.getText() !== text) ||
  ts.isJsxAttribute(parent);

function isWithin(node: ts.Node, is: (above: ts.Node, from: ts.Node) => boolean): boolean {
  for (let from: ts.Node = node; from.parent; from = from.parent) if (is(from.parent, from)) return true;
  return false;
}

/**
 * What a file exports for others to call that no maker of entries made: a constant that is another value than such a call, or
 * a function that calls none of what the file made so.
 *
 * @param allowed   values a file may export besides, such as Next's `dynamic`
 * @returns         names of the exports
 */
export function exportsNotMade(source: ts.SourceFile, allowed: readonly string[] = []): string[] {
  const { makers } = namesOf(source);
  const constants = source.statements
    .filter(ts.isVariableStatement)
    .flatMap((one) => [...one.declarationList.declarations]);
  const made = new Set(
    constants
      .filter(({ initializer }) => initializer && isCallOf(initializer, makers))
      .map(({ name }) => name.getText()),
  );
  return source.statements.flatMap((statement) => {
    if (ts.isExportAssignment(statement) || ts.isExportDeclaration(statement)) return [statement.getText()];
    const isExported =
      ts.canHaveModifiers(statement) &&
      /\bexport\b/.test(
        ts
          .getModifiers(statement)
          ?.map((one) => one.getText())
          .join(' ') ?? '',
      );
    if (!isExported || ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) return [];
    if (ts.isVariableStatement(statement))
      return statement.declarationList.declarations
        .map(({ name }) => name.getText())
        .filter((name) => !made.has(name) && !allowed.includes(name));
    return ts.isFunctionDeclaration(statement) && !callsOneOf(statement, made)
      ? [statement.name?.text ?? 'default']
      : [];
  });
}

function callsOneOf(node: ts.Node, made: ReadonlySet<string>): boolean {
  let calls = false;
  walk(node, (inner) => {
    calls ||= isCallOf(inner, made);
  });
  return calls;
}

/** Whether a file makes an entry for a page. */
export function asks(source: ts.SourceFile): boolean {
  return callsOneOf(source, namesOf(source).makers);
}

/** Whether a function within a file is said to be an action; such a one is seen by no list. */
export function hidesAction(source: ts.SourceFile): boolean {
  let hides = false;
  walk(source, (node) => {
    hides ||= ts.isBlock(node) && /^['"]use server['"]/.test(node.statements[0]?.getText() ?? '');
  });
  return hides;
}
