import { expect, test } from 'vitest';
import { notesOf } from '../../server/syntax/address.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { limits } from '../../server/syntax/limits.ts';
import { positionAt } from '../../server/syntax/position.ts';
import { plainValue } from '../../server/syntax/tree.ts';

/** The notes of a text, as `line:column code «what is underlined» what it says`. */
function checkNotes(text: string): readonly string[] {
  const document = openDocument(text);
  return notesOf(document).map(note => {
    const { line, character } = positionAt(document, note.range.from);
    const says = Object.values(note.params).join(' ');
    return `${line}:${character} ${note.code} «${text.slice(note.range.from, note.range.to)}» ${says}`.trimEnd();
  });
}

/** The names of the entries that were read although others are broken. */
function readNames(text: string): readonly string[] {
  return openDocument(text).entries.flatMap(({ tree }) =>
    tree.kind === 'map' ? tree.pairs.map(pair => pair.key.text) : [],
  );
}

test('A brace that is never closed harms its entry alone', () => {
  const text = 'waters:\n  mains: { pH: 7,\n  rain: { pH: 6 }\nfeeds:\n  a: {}\n';
  expect(checkNotes(text)).toEqual(['1:9 yaml-invalid «{» this brace { is never closed']);
  expect(readNames(text)).toEqual(['waters', 'mains', 'rain', 'feeds', 'a']);
});

test('A quote that is never closed harms its entry alone', () => {
  const text = 'title: "Reading room\nwaters:\n  mains: { pH: 7 }\n';
  expect(checkNotes(text)).toEqual(['0:7 yaml-invalid «"» this quote is never closed']);
  expect(readNames(text)).toEqual(['title', 'waters', 'mains']);
});

test('A quote that seems closed, and one that nobody reads, are noted where they begin', () => {
  expect(checkNotes("title: 'north side''\nshow: metric\n")).toEqual([
    "0:7 yaml-invalid «'» this quote is never closed",
  ]);
  expect(checkNotes("title: 'north side''")).toEqual(["0:7 yaml-invalid «'» this quote is never closed"]);
  expect(checkNotes('? "north" "side\n')).toEqual(['0:10 yaml-invalid «"» this quote is never closed']);
  expect(checkNotes("title: 'it''s'\n? 'a'\n: \"b\"\nnote: |\n  'open\n")).toEqual([]);
});

test('A tab before a line is shown where it stands', () => {
  expect(checkNotes('waters:\n  mains:\n\tpH: 7\n  rain: {}\n')).toEqual(['2:0 tab-indent «\t»']);
  expect(checkNotes('waters:\n\tmains: {}\n')).toEqual(['1:0 tab-indent «\t»']);
});

test('Merge-conflict markers are noted and what stands between them is read', () => {
  const text = 'waters:\n<<<<<<< ours\n  mains: { pH: 7 }\n=======\n  rain: { pH: 6 }\n>>>>>>> theirs\nfeeds: {}\n';
  expect(checkNotes(text)).toEqual([
    '1:0 conflict-marker «<<<<<<< ours» <<<<<<<',
    '3:0 conflict-marker «=======» =======',
    '5:0 conflict-marker «>>>>>>> theirs» >>>>>>>',
  ]);
  expect(readNames(text)).toEqual(['waters', 'mains', 'rain', 'feeds']);
});

test('Of two documents the first is read', () => {
  const text = 'recipe: 1\n---\ntitle: b\n';
  expect(checkNotes(text)).toEqual(['1:0 second-document «---»']);
  expect(readNames(text)).toEqual(['recipe']);
});

test('A name given twice is noted at the second, within an entry and across entries', () => {
  expect(checkNotes('waters:\n  mains: { pH: 7, pH: 8 }\n  mains: {}\nwaters: {}\n')).toEqual([
    '1:18 name-duplicate «pH» pH',
    '2:2 name-duplicate «mains» mains',
    '3:0 name-duplicate «waters» waters',
  ]);
});

test('Half a key is noted and leaves its neighbours whole', () => {
  const text = 'waters:\n  vol\n  mains: {}\nfeed\ntitle: x\n';
  expect(checkNotes(text)).toEqual([
    '1:2 yaml-invalid «vol» a colon is missing after this key',
    '3:0 yaml-invalid «feed» a colon is missing after this key',
  ]);
  expect(readNames(text)).toEqual(['waters', 'mains', 'title']);
});

test('An alias bomb is refused, not followed', () => {
  const levels = Array.from(
    { length: 20 },
    (_, at) => `l${at + 1}: &l${at + 1} [${Array(9).fill(`*l${at}`).join(', ')}]`,
  );
  const text = `l0: &l0 [x]\n${levels.join('\n')}\n`;
  expect(checkNotes(text).map(note => note.split(' ')[1])).toEqual(['alias-limit']);
  const [entry] = openDocument(text).entries;
  expect(entry && (plainValue(entry.tree) as Map<string, unknown>).size).toBe(21);
});

test('Anchors are followed within limits, and one that contains itself is noted', () => {
  expect(checkNotes('a: &a { b: 1 }\nc: *a\n')).toEqual([]);
  expect(checkNotes('a: &a [*a]\n')).toEqual([
    '0:7 yaml-invalid «*a» this repeat (*name) stands inside the value it repeats',
  ]);
  expect(checkNotes('c: *a\n')).toEqual(['0:3 yaml-invalid «*a» no value above is marked with this name (&name)']);
});

test('A file above the limit and a file that is no text are refused at once', () => {
  expect(checkNotes(`a: ${'x'.repeat(limits.fileLength)}\n`)).toEqual([`0:0 file-too-large «a» ${limits.fileLength}`]);
  expect(checkNotes('PK\u0003\u0004\u0000\u0001')).toEqual(['0:4 not-yaml «\u0000»']);
});

test('Depth beyond the limit is noted', () => {
  const deep = `a: ${'['.repeat(100_000)}\nb: 1\n`;
  expect(checkNotes(deep)).toEqual(['0:67 yaml-invalid «[» lists and maps stand too deep inside each other']);
  expect(readNames(deep)).toEqual(['b']);
  const blocks = `${Array.from({ length: 5000 }, (_, at) => `${' '.repeat(at + 1)}k:`).join('\n')}\n`;
  expect(checkNotes(`a:\n${blocks}`)).toHaveLength(1);
});

test('Empty files and files of comments have nothing to note', () => {
  for (const text of ['', '\n', '# note\n', '\uFEFF', '\uFEFF# note\r\n', '  ']) expect(checkNotes(text)).toEqual([]);
});

test('A name that objects have anyway is only a name', () => {
  const text = '__proto__:\n  constructor: 1\n  __proto__: 2\n';
  expect(checkNotes(text)).toEqual([]);
  expect(readNames(text)).toEqual(['__proto__', 'constructor', '__proto__']);
});
