import { resolve } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';

const house = resolve(import.meta.dirname, '../../..');
const entries = { fettle: 'src/library.ts', 'fettle/motion': 'src/motion-library.ts' };

/** The types of the library as they are built, by the file they are of. */
function builtTypes(): ReadonlyMap<string, string> {
  const { config } = ts.readConfigFile(resolve(house, 'tsconfig.library.json'), ts.sys.readFile);
  const { fileNames, options } = ts.parseJsonConfigFileContent(config, ts.sys, house);
  const texts = new Map<string, string>();
  const program = ts.createProgram(fileNames, { ...options, outDir: resolve(house, 'src'), removeComments: true });
  program.emit(undefined, (file, text) => texts.set(file, text), undefined, true);
  return texts;
}

/** The declarations behind what an entry exports, in the order of their names. */
function declarationsOf(entry: string, texts: ReadonlyMap<string, string>): string[] {
  const source = sourceOf(entry, texts);
  return source.statements
    .filter(ts.isExportDeclaration)
    .flatMap(({ exportClause, moduleSpecifier }) => {
      if (exportClause === undefined || moduleSpecifier === undefined) throw new Error(`${entry} exports by *`);
      const from = resolve(house, 'src', (moduleSpecifier as ts.StringLiteral).text);
      return (exportClause as ts.NamedExports).elements.map(({ name }) => declared(name.text, from, texts));
    })
    .sort();
}

function declared(name: string, file: string, texts: ReadonlyMap<string, string>): string {
  const source = sourceOf(file, texts);
  const found = source.statements.find((statement) => {
    if (ts.isVariableStatement(statement)) return statement.declarationList.declarations[0]?.name.getText() === name;
    return (statement as ts.DeclarationStatement).name?.getText() === name;
  });
  return found?.getText() ?? `${name} is not declared in ${file}`;
}

const sourceOf = (file: string, texts: ReadonlyMap<string, string>): ts.SourceFile => {
  const built = resolve(house, file).replace(/\.ts$/, '.d.ts');
  return ts.createSourceFile(built, texts.get(built) ?? '', ts.ScriptTarget.Latest, true);
};

it('the library offers what it did; a change here is one that programs out there will feel', async () => {
  const texts = builtTypes();
  const api = Object.entries(entries).map(
    ([name, file]) => `// ${name}\n\n${declarationsOf(file, texts).join('\n\n')}\n`,
  );
  await expect(api.join('\n')).toMatchFileSnapshot('../../golden/library-api.txt');
}, 120_000);
