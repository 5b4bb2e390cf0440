// What a writer of a recipe gets while changing it: findings, completion, quick fixes that can be undone.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { codeOf, eventually, findingsIn, openRecipe, placeOf, replaceOnce } from './recipe-file.ts';
import type { Test } from './test.ts';

export const writing: readonly Test[] = [
  foundWhileTyping('a misspelt key is found while it is typed', 'volume: 12 L', 'volme: 12 L', 'key-unknown: volme'),
  foundWhileTyping('a misspelt name is found', 'water: cistern', 'water: cistren', 'name-unknown: cistren'),
  {
    name: 'a quick fix puts the key right, and undo brings every byte back',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const sound = document.getText();
      await replaceOnce(document, 'volume: 12 L', 'volme: 12 L');
      const misspelt = document.getText();
      const finding = await eventually(
        () => vscode.languages.getDiagnostics(document.uri).find(found => codeOf(found) === 'key-unknown'),
        found => found !== undefined,
      );
      assert.ok(finding);
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        finding.range,
        vscode.CodeActionKind.QuickFix.value,
        5,
      );
      const fix = actions.find(action => action.edit !== undefined);
      assert.ok(fix?.edit, actions.map(action => action.title).join(', '));
      assert.ok(await vscode.workspace.applyEdit(fix.edit));
      assert.equal(document.getText(), sound);
      await vscode.commands.executeCommand('undo');
      assert.equal(document.getText(), misspelt);
    },
  },
  {
    name: 'a map in place of a name moves into its section',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await replaceOnce(document, 'water: cistern', 'water: { pH: 7, alkalinity: 1 meq/L }');
      const finding = await eventually(
        () => vscode.languages.getDiagnostics(document.uri).find(found => codeOf(found) === 'value-invalid'),
        found => found !== undefined,
      );
      assert.ok(finding);
      const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        document.uri,
        finding.range,
        vscode.CodeActionKind.QuickFix.value,
      );
      const move = actions.find(action => action.title === 'Move this into `waters` as `water-1`');
      assert.ok(move?.edit, actions.map(action => action.title).join(', '));
      assert.ok(await vscode.workspace.applyEdit(move.edit));
      assert.match(document.getText(), /\n {2}water-1: \{ pH: 7, alkalinity: 1 meq\/L \}\n/);
      assert.match(document.getText(), /\n {4}water: water-1\n/);
      assert.equal(move.command?.command, 'tidemark.renameAt');
      await vscode.commands.executeCommand('workbench.action.files.revert');
    },
  },
  {
    name: 'completion offers the keys of an entry',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await replaceOnce(document, '    volume: 12 L\n', '    volume: 12 L\n    adj\n');
      assert.ok((await completionsAfter(document, '    adj')).includes('adjust'));
    },
  },
  {
    name: 'completion offers the names that may stand there',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await replaceOnce(document, 'water: cistern', 'water: cis');
      assert.ok((await completionsAfter(document, 'water: cis')).includes('cistern'));
    },
  },
  {
    name: 'Enter goes on where a recipe goes on',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const editor = await vscode.window.showTextDocument(document);
      const end = document.lineAt(placeOf(document, 'opening:\n').line).range.end;
      // A slow host may still be reading the rules.
      await eventually(
        async () => {
          editor.selection = new vscode.Selection(end, end);
          await vscode.commands.executeCommand('type', { text: '\nair: closed' });
          const text = document.getText();
          await vscode.commands.executeCommand('workbench.action.files.revert');
          return text;
        },
        text => text.includes('  opening:\n    air: closed\n    water: cistern'),
      );
    },
  },
];

/** The labels offered behind `text`, without the icons or notes that may follow a name. */
async function completionsAfter(document: vscode.TextDocument, text: string): Promise<readonly string[]> {
  const start = document.offsetAt(placeOf(document, text));
  const list = await eventually(
    () =>
      vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        document.uri,
        document.positionAt(start + text.length),
      ),
    found => found.items.some(item => item.kind !== vscode.CompletionItemKind.Snippet),
  );
  return list.items.map(item => (typeof item.label === 'string' ? item.label : item.label.label));
}

function foundWhileTyping(name: string, sound: string, misspelt: string, finding: string): Test {
  return {
    name,
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await replaceOnce(document, sound, misspelt);
      await eventually(
        () => findingsIn(document),
        findings => findings.includes(finding),
      );
    },
  };
}
