// Draws texts that look like recipes, sound and broken ones, for the laws of the syntax.

import * as fc from 'fast-check';

const words = ['a', 'b', 'vol', 'water', '"q"', "'q'", 'x-y', '7', '__proto__', 'a b', '°C'];
const values = [
  '', '1', '2 mL/L', '5.5..6.5', '"a: b"', "'it''s'", '{ a: 1, b: [2, 3] }', '[]', '{}', '[1, {c: d}]', '|', '>-', '|2', '"open', '{ open: 1',
  '[1, 2', '&x 1', '*x', '!!str 5', '!tag v', '# note', 'v # note', '-', '- a', '? k', ': v', 'a: b', '"\\u00e9\\n"', '🌱 v', '~', 'x\ty', 'R & D', '5 * 3',
]; // biome-ignore format: a table
const stray = [
  '', '  ', '# note', '  # *note', '---', '...', '%YAML 1.2', '<<<<<<< ours', '=======', '>>>>>>> theirs', '\ta: 1', '  \tb: 2', '}', ']', '  }', '"', '{', '- x', '-',
  '  - y', '    more', ' text', 'vol', '  vol', '? k', ': v', '\u0000', '"a', 'b": 1', '  "a', '  b": 1', '|', '  |', '&x', '*x', '\r', 'k: &x 1', 'l: *x',
]; // biome-ignore format: a table

const indents = ['', '', '  ', '  ', '    ', ' ', '      '];

const line = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .tuple(fc.constantFrom(...indents), fc.constantFrom(...words), fc.constantFrom(...values))
      .map(([indent, key, value]) => `${indent}${key}: ${value}`),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom(...indents), fc.constantFrom(...words))
      .map(([indent, key]) => `${indent}${key}:`),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom(...indents), fc.constantFrom(...values))
      .map(([indent, value]) => `${indent}- ${value}`),
  },
  { weight: 2, arbitrary: fc.constantFrom(...stray) },
);

const breaks = fc.constantFrom('\n', '\n', '\n', '\r\n');

/** Lines thrown together: mostly broken, with every trap of the cut rule among them. */
export const oddText: fc.Arbitrary<string> = fc
  .tuple(fc.array(line, { maxLength: 14 }), breaks, fc.boolean(), fc.constantFrom('', '', '', '\uFEFF'))
  .map(([lines, lineBreak, ended, mark]) => mark + lines.join(lineBreak) + (ended ? lineBreak : ''));

const soundValue = fc.constantFrom(
  '1', '2 mL/L', '"a: b"', "'it''s'", '{ a: 1, b: [2, 3] }', '[1, {c: d}]', '!!str 5', 'v # note', '', '"two\n        lines"', '{ a: 1,\n        b: 2\n        }',
  '|\n        kept\n\n        # text\n', '|+\n        kept\n\n', '>-\n        folded\n        text', 'plain\n        goes on', '🌱', 'R & D', '5 * 3',
); // biome-ignore format: a table
const comment = fc.constantFrom('', '', '', '\n', '# note\n', '  # note\n', '      # *note\n');
const name = fc.constantFrom('a', 'b', 'c', 'd', 'e', '"f"', "'g'", '7', 'h i', '__proto__', '? k\n  ');

/** Sections of entries as people write them, with traps that are sound YAML. */
const soundSection = fc.oneof(
  fc
    .tuple(
      fc.constantFrom('  ', '    ', ' '),
      fc.uniqueArray(name, { minLength: 1, maxLength: 5 }),
      fc.array(fc.tuple(soundValue, comment, soundValue), { minLength: 5, maxLength: 5 }),
    )
    .map(([indent, names, rows]) =>
      names
        .filter(one => !one.startsWith('?'))
        .map((one, at) => {
          const [value, note, inner] = rows[at] ?? ['1', '', '2'];
          return at % 2 === 0
            ? `${indent}${one}: ${value}\n${note}`
            : `${indent}${one}:\n${note}${indent}   k: ${inner}\n${indent}   l:\n${indent}   - ${value}\n`;
        })
        .join(''),
    ),
  fc
    .tuple(fc.constantFrom('', '  '), fc.array(fc.tuple(soundValue, comment), { minLength: 1, maxLength: 4 }))
    .map(([indent, rows]) =>
      rows.map(([value, note], at) => `${indent}- ${at % 2 === 0 ? '' : 'k: '}${value}\n${note}`).join(''),
    ),
  fc.constantFrom(
    '  plain\n  goes on\n',
    '  "quoted\n  text: 1"\n',
    '  {\n  a: 1,\n  b: 2\n  }\n',
    '  |\n   text\n',
    '  !!map\n  a: 1\n',
    '\n',
    '  ? a\n  : b\n  ? c\n  : d\n',
  ),
);

/** Texts that are sound, or nearly always. */
export const soundText: fc.Arbitrary<string> = fc
  .tuple(
    comment,
    fc.uniqueArray(
      fc.tuple(
        fc.constantFrom('s', 't', 'u', 'v', 'w', '"x"', '__proto__'),
        fc.constantFrom('', ' # note', ' '),
        soundSection,
        comment,
        soundValue,
        fc.boolean(),
      ),
      {
        maxLength: 5,
        selector: ([key]) => key,
      },
    ),
    breaks,
    fc.constantFrom('', '', '', '\uFEFF', '---\n'),
  )
  .map(([top, sections, lineBreak, mark]) => {
    const text = sections
      .map(([key, tail, body, note, value, flat]) =>
        flat ? `${key}: ${value}\n${note}` : `${key}:${tail}\n${note}${body}`,
      )
      .join('');
    return (mark + top + text).replaceAll('\n', lineBreak);
  });

/** A change to a text of any length: where it begins and ends, as shares of the length, and what is put there. */
export const change = fc.record({
  from: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(
    { weight: 3, arbitrary: fc.constant(0) },
    { weight: 3, arbitrary: fc.integer({ min: 1, max: 4 }) },
    { weight: 1, arbitrary: fc.integer({ min: 5, max: 60 }) },
  ),
  text: fc.oneof(
    {
      weight: 3,
      arbitrary: fc.constantFrom(
        '',
        ' ',
        '\n',
        ':',
        '- ',
        '  ',
        '#',
        '"',
        '{',
        '}',
        '&x ',
        '*x',
        '\r',
        '\t',
        'a',
        '---\n',
      ),
    },
    { weight: 2, arbitrary: fc.array(line, { minLength: 1, maxLength: 3 }).map(lines => `${lines.join('\n')}\n`) },
  ),
});
