// What a reader of a recipe sees without changing it: hover, hints, outline.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, findingsIn, openRecipe, placeOf } from './recipe-file.ts';
import type { Test } from './test.ts';

export const reading: readonly Test[] = [
  {
    name: 'a sound recipe has no errors',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await hoverAt(document, 'meadow: label');
      const errors = vscode.languages
        .getDiagnostics(document.uri)
        .filter(finding => finding.severity === vscode.DiagnosticSeverity.Error);
      assert.deepEqual(errors, [], findingsIn(document).join('\n'));
    },
  },
  {
    name: 'hover on a dose tells its amount for the batch',
    async run() {
      // 12 L at the label's 2 mL/L.
      const document = await openRecipe('stairwell.grow.yaml');
      assert.match(await hoverAt(document, 'meadow: label'), /\b24 mL\b/);
    },
  },
  {
    name: 'a hint beside the dose tells the same amount',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const all = new vscode.Range(0, 0, document.lineCount, 0);
      const hints = await eventually(
        () => vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, all),
        found => found.length > 0,
      );
      const beside = hints.filter(hint => hint.position.line === placeOf(document, 'meadow: label').line);
      assert.match(beside.map(labelOf).join(' | '), /\b24 mL\b/);
    },
  },
  {
    name: 'the outline lists sections and what is in them',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>(
        'vscode.executeDocumentSymbolProvider',
        document.uri,
      );
      const batches = symbols.find(symbol => symbol.name === 'batches');
      assert.ok(batches, symbols.map(symbol => symbol.name).join(', '));
      assert.deepEqual(
        batches.children.map(child => child.name),
        ['opening'],
      );
    },
  },
];

/** The text of all hovers at the first letter of `text`, once there is one. */
async function hoverAt(document: vscode.TextDocument, text: string): Promise<string> {
  const hovers = await eventually(
    () =>
      vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        document.uri,
        placeOf(document, text),
      ),
    found => found.length > 0,
  );
  return hovers
    .flatMap(hover => hover.contents)
    .map(content => (typeof content === 'string' ? content : content.value))
    .join('\n');
}

function labelOf(hint: vscode.InlayHint): string {
  return typeof hint.label === 'string' ? hint.label : hint.label.map(part => part.value).join('');
}
