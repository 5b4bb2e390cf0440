import { expect, test } from 'vitest';
import { Workspace } from '../../server/workspace/workspace.ts';
import { checkFindings } from '../check-findings.ts';
import { recipe } from '../recipe.ts';

test('used files may stand on a line each', () => {
  const listed = recipe`
    recipe: 1
    use:
      - ./shelf.grow.yaml
      - ./bench.grow.yaml
      # ^^^^^^^^^^^^^^^^^ file-missing
    batches:
      tub: { water: pond, volume: 2 L, feed: { moss: label } }
    #-- shelf.grow.yaml
    recipe: 1
    waters: { pond: { pH: 7 } }
    feeds: { moss: { label: 2 mL/L } }
  `;
  expect(listed.snapshot().recipe.use).toEqual(['./shelf.grow.yaml', './bench.grow.yaml']);
  checkFindings(listed, ['not-computed', 'name-unused']);
});

test('a used file that is no text is marked where it stands', () => {
  checkFindings(
    recipe`
      recipe: 1
      use:
        - ./recipe.grow.yaml
        # ^^^^^^^^^^^^^^^^^^ cycle
        - [a]
        # ^^^ value-invalid
    `,
  );
});

test('beside a text that was never saved there is no file, and other recipes are not disturbed', () => {
  const workspace = new Workspace();
  workspace.open('untitled:Untitled-1', 'recipe: 1\nuse: [./shelf.grow.yaml]\n');
  workspace.open('vscode-vfs://host/garden/porch.grow.yaml', 'recipe: 1\nuse: [./shelf.grow.yaml]\n');
  const findings = workspace.snapshot('untitled:Untitled-1')?.findings ?? [];
  expect(findings.map(({ finding }) => finding)).toMatchObject([
    { code: 'file-missing', params: { file: './shelf.grow.yaml', reason: 'absent' } },
  ]);
  expect(workspace.wanted()).toEqual(['vscode-vfs://host/garden/shelf.grow.yaml']);
});
