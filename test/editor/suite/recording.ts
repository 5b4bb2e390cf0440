// What a grower writes down from the editor: an entry of the log, one edit that undo takes back.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, openRecipe } from './recipe-file.ts';
import type { Test } from './test.ts';

export const recording: readonly Test[] = [
  {
    name: 'a reading is added to the log, and undo brings every byte back',
    async run() {
      const known = { planting: 'landing', on: '2027-04-01', pH: '6.2', EC: '1.3 mS/cm', ask: false };
      await writesDown(
        'tidemark.recordReading',
        known,
        '- { on: 2027-04-01, planting: landing, pH: 6.2, EC: 1.3 mS/cm }',
      );
    },
  },
  {
    name: 'a top-up is added to the log, and undo brings every byte back',
    async run() {
      const known = { planting: 'landing', on: '2027-04-02', water: 'cistern', volume: '400 mL' };
      const item = '- { on: 2027-04-02, planting: landing, top-up: { water: cistern, volume: 400 mL } }';
      await writesDown('tidemark.recordTopUp', known, item);
    },
  },
  {
    name: 'a value that will not do changes nothing',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const sound = document.getText();
      const known = { planting: 'landing', on: '2027-04-01', pH: '62', ask: false };
      assert.equal(await vscode.commands.executeCommand('tidemark.recordReading', known), false);
      assert.equal(document.getText(), sound);
    },
  },
];

async function writesDown(command: string, known: object, item: string): Promise<void> {
  const document = await openRecipe('stairwell.grow.yaml');
  const sound = document.getText();
  // The server may have to start first.
  const written = await eventually(
    () => vscode.commands.executeCommand<boolean>(command, known),
    done => done,
  );
  assert.ok(written);
  assert.equal(document.getText(), `${sound}log:\n  ${item}\n`);
  await vscode.commands.executeCommand('undo');
  assert.equal(document.getText(), sound);
}
