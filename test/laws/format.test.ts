import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { parseAllDocuments } from 'yaml';
import { format } from '../../server/answers/format.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { withChanges } from '../../server/syntax/edit.ts';
import { spaceChanges } from '../../server/syntax/edit-spaces.ts';
import { tokensOf } from '../../server/syntax/tokens.ts';
import { randomFrom } from '../bench/random.ts';
import { oddText, soundText } from './odd-text.ts';

vi.setConfig({ testTimeout: 60_000 });

// What a file says is told by the `yaml` package reading the whole of it, so that the formatter's own reader is not trusted here.

function says(text: string): unknown {
  return parseAllDocuments(text, { stringKeys: true, uniqueKeys: false, logLevel: 'silent' }).map(document =>
    document.errors.length > 0 ? 'broken' : document.toJS({ mapAsMap: true }),
  );
}

/**
 * Everything but spaces, in order; of texts over several lines what stands on each. The spaces before the lines of a block
 * text move with what it belongs to, also where it has one line only.
 */
function words(text: string): readonly string[] {
  return tokensOf(text)
    .filter(({ kind }) => kind !== 'space' && kind !== 'break')
    .map(token =>
      token.kind === 'block-text' || token.text.includes('\n') ? token.text.replaceAll(/^[ \t]+/gm, '') : token.text,
    );
}

/** Odd spaces within lines and before them, where they mean nothing: from one sound text many. */
const loose = fc.tuple(soundText, fc.nat()).map(([text, seed]) => {
  const random = randomFrom(seed);
  const spaces = () => ' '.repeat(random.below(3));
  return text
    .replaceAll(/(?<=\w: |, |\{|\}|, )(?=[\w"'{}[])/g, spaces)
    .replaceAll(/(?<=[^|>\s"'])\n\n/g, () => `${spaces()}\n\n\n`);
});

test('a formatted file says the same, in the same words, quotes and comments', () => {
  fc.assert(
    fc.property(fc.oneof(soundText, loose, oddText), text => {
      const formatted = format(openDocument(text));
      if (formatted.kind === 'broken') return;
      expect(formatted.text).toBe(withChanges(text, formatted.changes));
      expect(says(formatted.text)).toEqual(says(text));
      expect(words(formatted.text)).toEqual(words(text));
    }),
    { numRuns: 2000 },
  );
});

test('a formatted file stays as it is when it is formatted again', () => {
  fc.assert(
    fc.property(fc.oneof(soundText, loose, oddText), text => {
      const once = format(openDocument(text));
      if (once.kind === 'broken') return;
      expect(format(openDocument(once.text))).toEqual({ kind: 'formatted', changes: [], text: once.text });
    }),
    { numRuns: 2000 },
  );
});

test('line ends stay what they were, and a byte order mark too', () => {
  fc.assert(
    fc.property(soundText, text => {
      const formatted = format(openDocument(text));
      if (formatted.kind === 'broken') return;
      const after = formatted.text;
      expect(after.startsWith('\uFEFF')).toBe(text.startsWith('\uFEFF'));
      if (text.includes('\r\n')) expect(after).not.toMatch(/(?<!\r)\n/);
      else expect(after).not.toContain('\r');
    }),
    { numRuns: 500 },
  );
});

test('lines of sound texts can nearly always be moved: the rules seldom need their safety net', () => {
  const counts = { all: 0, kept: 0 };
  fc.assert(
    fc.property(soundText, text => {
      const formatted = format(openDocument(text));
      if (formatted.kind === 'broken') return;
      counts.all++;
      const moved = withChanges(
        text,
        [...spaceChanges(text, { indent: true })].sort((a, b) => a.from - b.from),
      );
      if (moved !== formatted.text) counts.kept++;
    }),
    { numRuns: 2000, seed: 7 },
  );
  expect(counts.all).toBeGreaterThan(1000);
  expect(counts.kept / counts.all).toBeLessThan(0.01);
});
