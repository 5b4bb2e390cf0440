import { expect, test } from 'vitest';
import { checkFindings } from './check-findings.ts';
import { recipe } from './recipe.ts';

test('a finding is marked under its line', () => {
  checkFindings(
    recipe`
      recipe: 1
      waterz:
      #<----- key-unknown: did you mean \`waters\`?
      containers:
        crock:
          inside: { cylinder: { diameter: 14 L, height: 20 cm } }
          #                                  ^ unit-mismatch: a length belongs here
    `,
    ['name-unused', 'light-gets-in'],
  );
});

test('a finding that is not marked fails, and so does a mark without a finding', () => {
  expect(() => checkFindings(recipe`waters: { mains: { pH: 7 } }`)).toThrow(
    expect.objectContaining({ actual: expect.stringContaining('value-missing: A recipe needs `recipe`') }),
  );
  const marked = recipe`
    recipe: 1
    title: Shelf
    #      ^^^^^ value-invalid
  `;
  expect(() => checkFindings(marked)).toThrow(
    expect.objectContaining({ expected: expect.stringContaining('value-invalid') }),
  );
});

test('a template holds a cursor, a selection and files', () => {
  const { files, cursor, selection } = recipe`
    recipe: 1
    use: [./shelf.grow.yaml]
    #-- shelf.grow.yaml
    recipe: 1
    title: $0Shelf$0
  `;
  expect(files.map(file => file.text)).toEqual(['recipe: 1\nuse: [./shelf.grow.yaml]\n', 'recipe: 1\ntitle: Shelf\n']);
  expect(cursor).toEqual({ uri: 'file:///shelf.grow.yaml', offset: 17 });
  expect(selection).toEqual({ uri: 'file:///shelf.grow.yaml', from: 17, to: 22 });
});
