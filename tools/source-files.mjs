// What the two source checks share: the list of files, their syntax trees, and what a file imports.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

const CODE = /\.(ts|tsx|mts|mjs)$/;

/** Paths (with `/`) of all code files below `roots`, sorted. */
export function listCode(roots) {
  const found = [];
  const walk = (folder) => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) walk(path);
      else if (CODE.test(entry.name) && !entry.name.endsWith('.d.ts')) found.push(path.replaceAll('\\', '/'));
    }
  };
  for (const root of roots) walk(root);
  return found.sort();
}

export function parse(path, text = readFileSync(path, 'utf8')) {
  const kind = path.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  return ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
}

export function lineOf(source, node) {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}

/** Every module that a file names: import, export … from, import(), `import type`, `new URL('…', import.meta.url)`, a glob. */
export function importsOf(source) {
  const imports = [];
  const add = (node, specifier) => imports.push({ line: lineOf(source, node), specifier });
  const visit = (node) => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier) {
      add(node, node.moduleSpecifier.text);
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      add(node, node.argument.literal.text);
    } else if (ts.isCallExpression(node) && isModuleCall(node) && ts.isStringLiteralLike(node.arguments[0])) {
      add(node, node.arguments[0].text);
    } else if (isModuleUrl(node) || isGlob(node)) {
      add(node, node.arguments[0].text);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return imports;
}

function isModuleCall(node) {
  const callee = node.expression;
  return (
    node.arguments.length > 0 &&
    (callee.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(callee) && callee.text === 'require'))
  );
}

/** Vite's `import.meta.glob('…')`. */
function isGlob(node) {
  return (
    ts.isCallExpression(node) &&
    node.expression.getText() === 'import.meta.glob' &&
    node.arguments.length > 0 &&
    ts.isStringLiteralLike(node.arguments[0])
  );
}

function isModuleUrl(node) {
  return (
    ts.isNewExpression(node) &&
    ts.isIdentifier(node.expression) &&
    node.expression.text === 'URL' &&
    node.arguments?.length === 2 &&
    ts.isStringLiteralLike(node.arguments[0]) &&
    node.arguments[0].text.startsWith('.') &&
    node.arguments[1].getText().includes('import.meta')
  );
}
