import { expect, test } from 'vitest';
import { editsForMoves } from '../../../server/answers/navigate/moved-files.ts';
import { withChanges } from '../../../server/syntax/edit.ts';
import { Workspace } from '../../../server/workspace/workspace.ts';

const files = {
  'file:///fields/north/bed.grow.yaml': 'recipe: 1\nuse: [../shelf.grow.yaml, "./own.grow.yaml"] # both\n',
  'file:///fields/north/own.grow.yaml': 'recipe: 1\n',
  'file:///fields/shelf.grow.yaml': 'recipe: 1\nuse:\n  - ./north/own.grow.yaml\n',
};

function afterMove(from: string, to: string): Readonly<Record<string, string>> {
  const workspace = new Workspace();
  for (const [uri, text] of Object.entries(files)) workspace.open(uri, text);
  const held = workspace.uris.flatMap(uri => workspace.snapshot(uri) ?? []);
  const texts: Readonly<Record<string, string>> = files;
  return Object.fromEntries(
    editsForMoves(held, [{ from, to }]).map(({ uri, edits }) => [
      uri.replace('file:///fields/', ''),
      withChanges(texts[uri] ?? '', edits),
    ]),
  );
}

test('a file that is renamed is used by its new name', () => {
  expect(afterMove('file:///fields/shelf.grow.yaml', 'file:///fields/my%20%231%20shelf.grow.yaml')).toEqual({
    'north/bed.grow.yaml': 'recipe: 1\nuse: ["../my #1 shelf.grow.yaml", "./own.grow.yaml"] # both\n',
  });
});

test('a file that moves finds what it uses from its new folder', () => {
  expect(afterMove('file:///fields/north/bed.grow.yaml', 'file:///fields/bed.grow.yaml')).toEqual({
    'north/bed.grow.yaml': 'recipe: 1\nuse: [./shelf.grow.yaml, "./north/own.grow.yaml"] # both\n',
  });
});

test('a folder that moves takes its files along: what lies in it and uses each other stays as it is', () => {
  expect(afterMove('file:///fields/north', 'file:///fields/old/north')).toEqual({
    'north/bed.grow.yaml': 'recipe: 1\nuse: [../../shelf.grow.yaml, "./own.grow.yaml"] # both\n',
    'shelf.grow.yaml': 'recipe: 1\nuse:\n  - ./old/north/own.grow.yaml\n',
  });
});

test('a folder whose name only begins like another one is another one', () => {
  expect(afterMove('file:///fields/nor', 'file:///fields/south')).toEqual({});
});
