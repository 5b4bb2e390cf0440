// The bench sheet beside the recipe: there when asked for, live while the recipe changes, and a file when it is saved.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, openRecipe, replaceOnce } from './recipe-file.ts';
import type { Test } from './test.ts';

export const benchSheet: readonly Test[] = [
  {
    name: 'a bench sheet stands beside the recipe and follows what is typed',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await show({ batch: 'opening' });
      await until(/meadow<.*>24 mL</);
      await replaceOnce(document, 'volume: 12 L', 'volume: 10 L');
      await until(/meadow<.*>20 mL</);
      await replaceOnce(document, '  opening:\n    water', '  closing:\n    water');
      await until(/no batch named opening/);
      await openRecipe('stairwell.grow.yaml');
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    },
  },
  {
    name: 'a day has a bench sheet',
    async run() {
      await openRecipe('stairwell.grow.yaml');
      await show({ day: '2027-02-01' });
      await until(/Bench sheet: Monday, 2027-02-01[\s\S]*Bench sheet: batch opening/);
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    },
  },
  {
    name: 'a bench sheet is saved as a page to print',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const target = vscode.Uri.joinPath(document.uri, '../opening.html');
      const wanted = { batch: 'opening', to: target.toString() };
      assert.equal(await vscode.commands.executeCommand('tidemark.saveBenchSheet', wanted), true);
      const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(target));
      assert.match(text, /^<!doctype html>/);
      assert.match(text, /24 mL/);
      await vscode.workspace.fs.delete(target);
      await vscode.commands.executeCommand('notifications.clearAll');
    },
  },
];

/** Runs the command; the sheet then has a tab of its own. */
async function show(about: { readonly batch: string } | { readonly day: string }): Promise<void> {
  assert.equal(await vscode.commands.executeCommand('tidemark.showBenchSheet', about), true);
  const wanted = `Bench sheet: ${'batch' in about ? about.batch : about.day} · stairwell.grow.yaml`;
  await eventually(
    () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label)),
    labels => labels.includes(wanted),
  );
}

/** Waits until the one sheet on the screen says something. */
async function until(says: RegExp): Promise<void> {
  const extension = vscode.extensions.getExtension<{ shownSheets(): readonly string[] }>('tidemark.tidemark');
  await eventually(
    () => extension?.exports.shownSheets() ?? [],
    ([html = '', ...others]) => others.length === 0 && says.test(html),
  );
}
