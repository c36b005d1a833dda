import ts from 'typescript';
import type { TextFile } from './files.ts';

/** `sag.seen`, `tools.no-bit`: a family, a point, words with hyphens. */
const CODE = /^[a-z]+(?:-[a-z]+)*\.[a-z0-9]+(?:-[a-z0-9]+)*$/;
/** What snags are made with, besides an object with a `code`: the first argument of these is one. */
const MAKERS = new Set(['add', 'fault', 'snag', 'stop']);

/**
 * Codes of snags that a source makes: texts in the place of a `code`, and texts anywhere that belong to a family of
 * `families`. The dry fit's own faults have no family; the plan puts `dry-fit.` before them.
 */
export function snagCodes({ path, text }: TextFile, families: ReadonlySet<string>): readonly string[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found = new Set<string>();
  const visit = (node: ts.Node) => {
    if (ts.isStringLiteral(node) && !ts.isImportDeclaration(node.parent)) {
      const fault = path.startsWith('src/dry-fit/') && isInCodeType(node);
      const code = fault ? `dry-fit.${node.text}` : node.text;
      if (CODE.test(code) && (fault || isCode(node) || families.has(code.split('.')[0]!))) found.add(code);
    }
    node.forEachChild(visit);
  };
  source.forEachChild(visit);
  return [...found].sort();
}

function isCode(node: ts.StringLiteral): boolean {
  let at: ts.Node = node;
  while (ts.isConditionalExpression(at.parent) && at.parent.condition !== at) at = at.parent;
  const { parent } = at;
  if (ts.isPropertyAssignment(parent) || ts.isVariableDeclaration(parent))
    return parent.initializer === at && parent.name.getText() === 'code';
  if (!ts.isCallExpression(parent) || parent.arguments[0] !== at) return false;
  const called = parent.expression;
  return MAKERS.has(ts.isPropertyAccessExpression(called) ? called.name.text : called.getText());
}

/** One of the texts that a `code` may be, in a type. */
function isInCodeType(node: ts.StringLiteral): boolean {
  const type = node.parent;
  if (!ts.isLiteralTypeNode(type)) return false;
  const owner = ts.isUnionTypeNode(type.parent) ? type.parent.parent : type.parent;
  return ts.isPropertySignature(owner) && owner.name.getText() === 'code';
}
