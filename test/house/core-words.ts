import ts from 'typescript';

/** Names of the world outside: the clock, chance, the locale, the console, the process, the page, the network. */
const OUTSIDE = new Set([
  'Date',
  'Intl',
  'console',
  'process',
  'performance',
  'globalThis',
  'window',
  'document',
  'navigator',
  'localStorage',
  'fetch',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'crypto',
  'Buffer',
  'require',
]);
/** Members that depend on the locale or on chance, whatever they are called on. */
const OUTSIDE_MEMBERS = /^(?:toLocale\w*|localeCompare)$/;

/** Words of the outside world that a source of the core uses, with their lines; comments and strings don't count. */
export function outsideWords(path: string, text: string): readonly string[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const note = (node: ts.Node, word: string) => {
    const { line } = source.getLineAndCharacterOfPosition(node.getStart());
    found.push(`${path}:${line + 1} ${word}`);
  };
  const visit = (node: ts.Node) => {
    if (ts.isPropertyAccessExpression(node)) {
      if (OUTSIDE_MEMBERS.test(node.name.text)) note(node, node.name.text);
      if (node.expression.getText() === 'Math' && node.name.text === 'random') note(node, 'Math.random');
      visit(node.expression);
      return;
    }
    if (ts.isExportAssignment(node)) note(node, 'export default');
    if (ts.isIdentifier(node) && OUTSIDE.has(node.text) && isUse(node)) note(node, node.text);
    node.forEachChild(visit);
  };
  source.forEachChild(visit);
  return found;
}

/** Whether an identifier reads a value of that name, rather than naming a member, a field or a variable of ours. */
function isUse(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAssignment(parent) || ts.isEnumMember(parent)) return parent.name !== node;
  if (ts.isShorthandPropertyAssignment(parent)) return !isDeclared(node);
  const named = parent as { name?: ts.Node; propertyName?: ts.Node };
  if (named.name === node || named.propertyName === node) return false;
  return !isDeclared(node);
}

/** Whether a parameter, variable or import of that name stands in a scope round the identifier. */
function isDeclared(node: ts.Identifier): boolean {
  for (let scope: ts.Node | undefined = node.parent; scope; scope = scope.parent) {
    let found = false;
    const look = (inner: ts.Node) => {
      if (found) return;
      if (
        (ts.isVariableDeclaration(inner) || ts.isParameter(inner) || ts.isBindingElement(inner)) &&
        ts.isIdentifier(inner.name) &&
        inner.name.text === node.text
      )
        found = true;
      else if (ts.isImportSpecifier(inner) && inner.name.text === node.text) found = true;
      else if (inner === scope || !ts.isFunctionLike(inner)) inner.forEachChild(look);
    };
    if (ts.isFunctionLike(scope) || ts.isBlock(scope) || ts.isSourceFile(scope)) look(scope);
    if (found) return true;
  }
  return false;
}

/** What a table of contents holds besides explicit named exports from its own files. */
export function notContents(path: string, text: string): readonly string[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  return source.statements
    .filter(
      (s) =>
        !(
          ts.isExportDeclaration(s) &&
          s.moduleSpecifier !== undefined &&
          s.exportClause !== undefined &&
          ts.isNamedExports(s.exportClause)
        ),
    )
    .map((s) => `${path}: ${s.getText().split('\n')[0]}`);
}
