// Ways through recipes and changes over several of them, each asked for once as the editor asks.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, openRecipe, placeOf, replaceOnce } from './recipe-file.ts';
import type { Test } from './test.ts';

export const navigation: readonly Test[] = [
  {
    name: 'a name leads to its entry in another file',
    async run() {
      const bench = await openRecipe('bench.grow.yaml');
      const found = await ask<(vscode.Location | vscode.LocationLink)[]>(
        'vscode.executeDefinitionProvider',
        bench,
        placeOf(bench, 'meadow'),
      );
      const [first] = found;
      assert.ok(first);
      const { uri, range } =
        'targetUri' in first ? { uri: first.targetUri, range: first.targetSelectionRange } : { ...first };
      const target = await vscode.workspace.openTextDocument(uri);
      assert.equal(target.getText(range), 'meadow');
      assert.ok(uri.path.endsWith('/stairwell.grow.yaml'), uri.path);
    },
  },
  {
    name: 'references are found in a recipe that nobody has opened',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const position = placeOf(document, 'cistern:');
      const found = await eventually(
        () =>
          vscode.commands.executeCommand<vscode.Location[]>('vscode.executeReferenceProvider', document.uri, position),
        locations => locations.length === 3,
      );
      const files = found.map(({ uri }) => uri.path.slice(uri.path.lastIndexOf('/') + 1)).sort();
      assert.deepEqual(files, ['bench.grow.yaml', 'stairwell.grow.yaml', 'stairwell.grow.yaml']);
    },
  },
  {
    name: 'a name is changed wherever it is written',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const edit = await vscode.commands.executeCommand<vscode.WorkspaceEdit>(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        placeOf(document, 'meadow:\n'),
        'clover',
      );
      const edited = edit
        .entries()
        .map(([uri, edits]) => `${uri.path.slice(uri.path.lastIndexOf('/') + 1)} ${edits.length}`);
      assert.deepEqual(edited.sort(), ['bench.grow.yaml 1', 'stairwell.grow.yaml 2']);
    },
  },
  {
    name: 'the places of a name are marked',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const found = await ask<vscode.DocumentHighlight[]>(
        'vscode.executeDocumentHighlights',
        document,
        placeOf(document, 'opening:'),
      );
      assert.deepEqual(
        found.map(({ range }) => document.getText(range)),
        ['opening', 'opening'],
      );
    },
  },
  {
    name: 'entries of all recipes are found by name',
    async run() {
      await openRecipe('stairwell.grow.yaml');
      const found = await eventually(
        () =>
          vscode.commands.executeCommand<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'spare'),
        symbols => symbols.length > 0,
      );
      assert.equal(found[0]?.name, 'spare');
    },
  },
  {
    name: 'a used file is a link',
    async run() {
      const bench = await openRecipe('bench.grow.yaml');
      const [link] = await ask<vscode.DocumentLink[]>('vscode.executeLinkProvider', bench);
      assert.ok(link);
      assert.ok(link.target?.path.endsWith('/stairwell.grow.yaml'), String(link.target));
      assert.equal(bench.getText(link.range), './stairwell.grow.yaml');
    },
  },
  {
    name: 'sections and entries fold',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const folds = await ask<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider', document);
      const lines = folds.map(({ start, end }) => `${document.lineAt(start).text.trim()} ${end - start}`);
      assert.ok(lines.includes('cistern: 2') && lines.includes('waters: 3'), lines.join(', '));
    },
  },
  {
    name: 'a selection grows by what the text means',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const at = placeOf(document, 'mg/L CaCO3');
      const [grown] = await ask<vscode.SelectionRange[]>('vscode.executeSelectionRangeProvider', document, [at]);
      const steps: string[] = [];
      for (let step = grown; step !== undefined; step = step.parent) steps.push(document.getText(step.range));
      const wanted = ['mg/L CaCO3', '90 mg/L CaCO3', 'alkalinity: 90 mg/L CaCO3'];
      assert.ok(
        wanted.every(text => steps.includes(text)),
        steps.slice(0, 5).join(' | '),
      );
    },
  },
  {
    name: 'words are coloured by what they are',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const legend = await eventually(
        () =>
          vscode.commands.executeCommand<vscode.SemanticTokensLegend | undefined>(
            'vscode.provideDocumentSemanticTokensLegend',
            document.uri,
          ),
        found => found !== undefined,
      );
      const { data } = await ask<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document);
      const types = new Set<string | undefined>();
      for (let at = 3; at < data.length; at += 5) types.add(legend?.tokenTypes[data[at] ?? -1]);
      for (const type of ['namespace', 'property', 'variable', 'number', 'unit', 'date'])
        assert.ok(types.has(type), type);
    },
  },
  {
    name: 'a bench sheet and a reading are offered above a batch, and comparing where there may be a commit',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const lenses = await eventually(
        () => vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 10),
        found => found.length >= 2,
      );
      const commands = lenses.map(({ command }) => command?.command).sort();
      const comparing = document.uri.scheme === 'file' ? ['tidemark.compareWithCommit'] : [];
      assert.deepEqual(commands, [...comparing, 'tidemark.recordReading', 'tidemark.showBenchSheet']);
    },
  },
  {
    name: 'formatting puts spaces in order and leaves comments alone',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const sound = document.getText();
      await replaceOnce(document, '{ meadow: label } # by', '{meadow:   label} # by');
      const edits = await eventually(
        () =>
          vscode.commands.executeCommand<vscode.TextEdit[] | undefined>(
            'vscode.executeFormatDocumentProvider',
            document.uri,
            { tabSize: 2, insertSpaces: true },
          ),
        found => (found?.length ?? 0) > 0,
      );
      const edit = new vscode.WorkspaceEdit();
      edit.set(document.uri, edits ?? []);
      assert.ok(await vscode.workspace.applyEdit(edit));
      assert.equal(document.getText(), sound);
    },
  },
  {
    name: 'recipes that nobody has opened have findings, and lose them when they are mended',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const bench = vscode.Uri.joinPath(document.uri, '../bench.grow.yaml');
      await replaceOnce(document, '  cistern:\n', '  cisterna:\n');
      const unknown = () => vscode.languages.getDiagnostics(bench).filter(({ message }) => message.includes('cistern'));
      await eventually(unknown, found => found.length > 0);
      await vscode.commands.executeCommand('workbench.action.files.revert');
      await eventually(unknown, found => found.length === 0);
    },
  },
];

/** Asks until there is an answer that holds something. */
function ask<T extends object>(
  command: string,
  document: vscode.TextDocument,
  ...more: readonly unknown[]
): Promise<T> {
  return eventually(
    () => vscode.commands.executeCommand<T>(command, document.uri, ...more),
    found => found !== undefined && found !== null && (!Array.isArray(found) || found.length > 0),
  );
}
