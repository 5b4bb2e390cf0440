import { expect, test } from 'vitest';
import { format, formatRange } from '../../server/answers/format.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { textOf } from '../house/source.ts';

function formatted(text: string): string {
  const result = format(openDocument(text));
  if (result.kind === 'broken') throw new Error(`broken at ${result.offset}`);
  return result.text;
}

test('indentation, spaces and blank lines come in order; words and comments stay', () => {
  const loose = `recipe:   1
title: 'Two  quotes'


# The bench by the window.
waters:
    brook:   {pH: 7.1,alkalinity:  1 meq/L  }
    well:
          pH: 7.4   # by strip
          alkalinity:\t2 meq/L
log:
- {on: 2027-03-01 ,pH: 6}
-   on: 2027-03-08
    pH: 6.20
show: metric   `;
  expect(formatted(loose)).toMatchInlineSnapshot(`
    "recipe: 1
    title: 'Two  quotes'

    # The bench by the window.
    waters:
      brook: { pH: 7.1, alkalinity: 1 meq/L }
      well:
        pH: 7.4   # by strip
        alkalinity: 2 meq/L

    log:
      - { on: 2027-03-01, pH: 6 }
      - on: 2027-03-08
        pH: 6.20

    show: metric
    "
  `);
});

test('texts of lines keep their lines, and move with what they belong to', () => {
  const text = `x-notes:
    plain:   goes on
      and on
    block: |+
        kept   
          deeper

    # after
    folded: >-
        one
        two
`;
  expect(formatted(text)).toMatchInlineSnapshot(`
    "x-notes:
      plain: goes on
        and on
      block: |+
          kept   
            deeper

      # after
      folded: >-
          one
          two
    "
  `);
});

test('comments stand as what they are about', () => {
  const text = `waters:
    # of the brook
    brook: { pH: 7 }
       # hangs on
    # of the well
    well: { pH: 7 }
# of the feeds
feeds:
    leaf: { label: 2 mL/L }   # lined up
    fruit: { label: 12 mL/L } # lined up
`;
  expect(formatted(text)).toMatchInlineSnapshot(`
    "waters:
      # of the brook
      brook: { pH: 7 }
         # hangs on
      # of the well
      well: { pH: 7 }

    # of the feeds
    feeds:
      leaf: { label: 2 mL/L }   # lined up
      fruit: { label: 12 mL/L } # lined up
    "
  `);
});

test('what is in order stays as it is: the samples', () => {
  const files = [
    'samples/lighthouse/kitchen.grow.yaml',
    'samples/lighthouse/shelf.grow.yaml',
    'samples/cistern/porch.grow.yaml',
  ];
  for (const file of files) expect(formatted(textOf(file))).toBe(textOf(file));
});

test('line ends, a byte order mark and a missing last line end', () => {
  expect(formatted('\uFEFFrecipe:  1\r\ntitle: a')).toBe('\uFEFFrecipe: 1\r\ntitle: a\r\n');
  expect(formatted('')).toBe('');
  expect(formatted('\n\n')).toBe('');
  expect(formatted('# only this')).toBe('# only this\n');
});

test.each([
  ['an open quote', 'title: "a\n'],
  ['a tab', 'waters:\n\tbrook: { pH: 7 }\n'],
  ['a conflict', '<<<<<<< ours\ntitle: a\n=======\ntitle: b\n>>>>>>> theirs\n'],
  ['a second document', 'title: a\n---\ntitle: b\n'],
  ['no text', 'a\0'],
  ['an open quote where the reader does not look', '? k\n- \n a: "open'],
  ['an open single quote there', "? k\n- \n a: 'it''"],
])('what is broken is left alone: %s', (_, text) => {
  expect(format(openDocument(text)).kind).toBe('broken');
});

test.each([
  ['a blank line behind an empty text of lines', 'a: |\na:\n      a: ', 'a: |\n\na:\n  a:\n'],
  ['the same, folded', 'a: >-\na:\n a: ', 'a: >-\n\na:\n  a:\n'],
  ['the same, with its indentation written', 'a: |2\nb:\n    c: 1\n', 'a: |2\n\nb:\n  c: 1\n'],
  ['the same, on a line of its own', 'a:\n  |\na: ', 'a:\n  |\n\na:\n'],
  ['the same, deeper', 'a:\n  a: |\na: ', 'a:\n  a: |\n\na:\n'],
  ['the same, with a text behind', 'a: |\na:\n    more', 'a: |\n\na:\n  more\n'],
  ['the same, with other line ends', 'a: |\r\nb:\r\n    c: 1\r\n', 'a: |\r\n\r\nb:\r\n  c: 1\r\n'],
  ['blank lines behind an empty text of lines', 'a: |\n\n\n\nb:   1\n', 'a: |\n\nb: 1\n'],
  ['blank lines that an empty text of lines keeps', 'a: |+\n\n\n\nb:   1\n', 'a: |+\n\n\n\nb: 1\n'],
  ['blank lines kept by a sign with a comment', 'a: |+ # c\n  b\n\n\nb:   1\n', 'a: |+ # c\n  b\n\n\nb: 1\n'],
  ['a text of one line without a line end', '  a: |\n    more', 'a: |\n  more'],
  ['spaces behind a byte order mark', '\uFEFF      a:\n  - y', '\uFEFFa:\n  - y\n'],
])('what comes in order stays so: %s', (_, text, wanted) => {
  expect(formatted(text)).toBe(wanted);
  expect(formatted(wanted)).toBe(wanted);
});

test('of chosen lines only those change', () => {
  const text = 'recipe:   1\nwaters:\n  brook:   {pH: 7.1}\n  well:   {pH: 7.4}\n';
  const at = text.indexOf('well');
  const result = formatRange(openDocument(text), { from: at, to: at + 1 });
  expect(result.kind === 'formatted' && result.text).toBe(
    'recipe:   1\nwaters:\n  brook:   {pH: 7.1}\n  well: { pH: 7.4 }\n',
  );
});

test('lines that cannot be moved without those round them keep their indentation', () => {
  const text = 'recipe: 1\nwaters:\n    brook:   {pH: 7.1}\n    well:   {pH: 7.4}\n';
  const at = text.indexOf('well');
  const result = formatRange(openDocument(text), { from: at, to: at + 1 });
  expect(result.kind === 'formatted' && result.text).toBe(
    'recipe: 1\nwaters:\n    brook:   {pH: 7.1}\n    well: { pH: 7.4 }\n',
  );
});
