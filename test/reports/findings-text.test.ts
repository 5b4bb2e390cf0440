import { expect, test } from 'vitest';
import type { Reported } from '../../server/reports/findings/reported.ts';
import { findingsText } from '../../server/reports/findings/text.ts';
import { plainPaint } from '../../server/reports/print/paint.ts';
import { padded, printable, widthOf } from '../../server/reports/print/terminal.ts';

function textOf(line: string, from: number, to: number): string {
  const finding: Reported = {
    code: 'value-invalid',
    severity: 'warning',
    message: 'It is odd.',
    file: 'a.grow.yaml',
    range: { start: { line: 8, character: from }, end: { line: 8, character: to } },
    help: 'Mend it.',
    path: 'x',
    excerpt: { line, from, to },
  };
  const printer = findingsText({ paint: plainPaint, version: '1.0.0', failOn: 'error' });
  const [, , shown = '', mark = ''] = printer
    .file({ file: 'a.grow.yaml', fromRoot: 'a.grow.yaml', findings: [finding] })
    .split('\n');
  return `${shown}\n${mark}`;
}

test('the mark stands under what is meant, whatever stands before it', () => {
  expect(textOf('pot: 水🌱é x', 9, 11)).toBe('    9 | pot: 水🌱é x\n      |           ~~');
  expect(textOf('\tpot: 1', 6, 7)).toBe('    9 |   pot: 1\n      |        ~');
});

test('of a long line only what stands round the place is shown', () => {
  const [shown = '', mark = ''] = textOf(`${'a'.repeat(5000)}WRONG${'b'.repeat(5000)}`, 5000, 5005).split('\n');
  expect(shown).toBe(`    9 | …${'a'.repeat(60)}WRONG${'b'.repeat(40)}…`);
  expect(mark.indexOf('~')).toBe(shown.indexOf('W'));
  expect(mark.endsWith('~'.repeat(5))).toBe(true);
});

test('a place at the end of a line is still marked', () => {
  expect(textOf('pot:', 4, 4)).toBe('    9 | pot:\n      |     ~');
});

test('widths as a terminal counts them', () => {
  expect(widthOf('abc')).toBe(3);
  expect(widthOf('e\u0301')).toBe(1);
  expect(widthOf('水')).toBe(2);
  expect(padded('水', 4)).toBe('水  ');
});

test('what could move the cursor or turn the text round is shown as a mark', () => {
  expect(printable('a\u001b[31mb\u202ec\ud800')).toBe('a\ufffd[31mb\ufffdc\ufffd');
  expect(printable('grün 🌱 ½ µ')).toBe('grün 🌱 ½ µ');
});
