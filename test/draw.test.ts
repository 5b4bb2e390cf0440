import { expect, test } from 'vitest';
import { valueAt } from '../schema/place.ts';
import { drawApplied, drawAtCursor, drawHints, drawMarkdown, drawMarks } from './draw.ts';
import { marksOf } from './recipe.ts';

test('marks are drawn as they are written', () => {
  const text = ['waterz:', '#<----- key-unknown: waters', '  tap: { pH: x }', '  #          ^ value-invalid'].join(
    '\n',
  );
  expect(drawMarks(text, marksOf(text))).toBe(text);
});

test('the cursor stands under the line, in the range that is explained', () => {
  expect(drawAtCursor('a: 1\nbatch: 20 L\n', 13, { from: 12, to: 16 }, 'said')).toBe('batch: 20 L\n       ▔↑▔▔\nsaid');
});

test('hints stand in the text', () => {
  const hints = [
    { offset: 4, text: '= 1' },
    { offset: 9, text: '= 2' },
  ];
  expect(drawHints('a: b\nc: d\n', hints)).toBe('a: b⟦= 1⟧\nc: d⟦= 2⟧\n');
});

test('edits are applied where they say', () => {
  const edits = [{ kind: 'replace', at: valueAt(['show']), text: 'us' }] as const;
  expect(drawApplied('recipe: 1 # one\nshow: metric\n', edits)).toBe('recipe: 1 # one\nshow: us\n');
});

test('markdown is drawn as a reader sees it', () => {
  expect(drawMarkdown('**4 mL** of `a`  \n*a source*\n| a | b |\n| :-- | --: |\n---\n2 \\* 3')).toBe(
    '4 mL of a\na source\n| a | b |\n────\n2 * 3',
  );
});
