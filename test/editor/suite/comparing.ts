// The page that tells what has changed since the last commit: clear words where there is none, and live where there is one.
import * as assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import * as vscode from 'vscode';
import { eventually, openRecipe, replaceOnce } from './recipe-file.ts';
import type { Test } from './test.ts';

export const comparing: readonly Test[] = [
  {
    name: 'without a repository, the comparison says so',
    async run() {
      await openRecipe('stairwell.grow.yaml');
      const page = await compare();
      await eventually(
        () => page.getText(),
        text => text.includes('in no Git repository'),
      );
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    },
  },
  {
    name: 'the comparison with the last commit follows what is typed, and a commit ends it',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const folder = vscode.workspace.workspaceFolders?.[0]?.uri.fsPath;
      assert.ok(folder);
      git(folder, 'init', '--quiet');
      git(folder, 'add', '.');
      git(folder, 'commit', '--quiet', '--message', 'The stairwell');
      const page = await compare();
      await eventually(
        () => page.getText(),
        text => text.includes('No value changes'),
      );
      await replaceOnce(document, 'volume: 12 L', 'volume: 10 L');
      const told = await eventually(
        () => page.getText(),
        text => text.includes('12 L'),
      );
      assert.match(told, /volume +12 L +-> 10 L +-2 L \(-17 %\) +\[1\]/);
      assert.match(told, /dose of meadow +24 mL +-> 20 mL/);
      assert.match(told, /\[1\] batches › opening › volume: 12 L, now 10 L \(stairwell\.grow\.yaml:\d+\)/);
      await document.save();
      git(folder, 'commit', '--quiet', '--all', '--message', 'Less');
      await eventually(
        () => page.getText(),
        text => text.includes('No value changes'),
      );
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
    },
  },
];

/** Runs the command and gives the page that it opened. */
async function compare(): Promise<vscode.TextDocument> {
  assert.equal(await vscode.commands.executeCommand('tidemark.compareWithCommit'), true);
  const page = vscode.workspace.textDocuments.find(
    ({ uri }) => uri.scheme === 'tidemark-review' && uri.path.includes('stairwell'),
  );
  assert.ok(page, 'a page is open');
  return page;
}

function git(folder: string, ...args: readonly string[]): void {
  const who = ['-c', 'user.name=Somebody', '-c', 'user.email=somebody@example.org', '-c', 'commit.gpgsign=false'];
  execFileSync('git', [...who, ...args], { cwd: folder, stdio: 'pipe' });
}
