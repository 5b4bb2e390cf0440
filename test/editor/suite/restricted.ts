// The suite for a folder that is not trusted: since nothing executes, everything works there too.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { benchSheet } from './bench-sheet.ts';
import { reading } from './reading.ts';
import { runTests, type Test } from './test.ts';
import { writing } from './writing.ts';

const restricted: readonly Test[] = [
  {
    name: 'the folder is in Restricted Mode',
    async run() {
      assert.equal(vscode.workspace.isTrusted, false);
    },
  },
];

export function run(): Promise<void> {
  const alike = [...reading, ...writing, ...benchSheet].filter(test =>
    /hover on a dose|misspelt key|follows what is typed/.test(test.name),
  );
  return runTests([...restricted, ...alike], `${__filename}.json`);
}
