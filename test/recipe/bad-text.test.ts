// Texts that are hardly recipes: broken, merged, huge, in other encodings. Nothing throws, each is told at its place, and what can be
// read is computed.

import { describe, expect, test } from 'vitest';
import { Workspace } from '../../server/workspace/workspace.ts';
import { checkFindings } from '../check-findings.ts';
import { markedRecipe, recipe } from '../recipe.ts';
import { check, dose, sound, withSound } from './sound.ts';

describe('text', () => {
  test('a brace that is never closed harms its entry only', () => {
    const marked = withSound`
      recipe: 1
      tools:
        can: { holds: 12 L
        #    ^ yaml-invalid: this brace { is never closed
        jug: { holds: 3 galon }
        #               ^^^^^ unit-unknown: did you mean \`gal\`?
      waters:
    `;
    check(marked);
  });

  test('a quote that is never closed harms its entry only', () => {
    check(withSound`
      recipe: 1
      title: "Reading room
      #      ^ yaml-invalid: this quote is never closed
      waters:
    `);
  });

  test('a tab that indents', () => {
    check(
      markedRecipe(`recipe: 1
tools:
\tcan: { holds: 12 L }
#< tab-indent: YAML indents by spaces only
waters:
  rain: { alkalinity: 0 mg/L CaCO3 }
${sound}`),
    );
  });

  test('an alias bomb is defused', () => {
    const levels = ['b', 'c', 'd', 'e', 'f', 'g', 'h', 'i'].map((name, index) => {
      const before = String.fromCharCode('a'.charCodeAt(0) + index);
      return `x-${name}: &${name} [${Array.from({ length: 10 }, () => `*${before}`).join(', ')}]\n`;
    });
    const text = `recipe: 1\nx-a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]\n${levels.join('')}waters: { rain: {} }\n${sound}`;
    const snapshot = markedRecipe(text).snapshot();
    expect(snapshot.findings.map(({ finding }) => finding.code)).toEqual(['alias-limit']);
    expect(dose(snapshot, 'opening', 'green')).toBe('40 mL');
  });

  test('aliases that stay small are read as what they repeat', () => {
    const marked = recipe`
      recipe: 1
      waters: { rain: &soft { alkalinity: 0 mg/L CaCO3 }, roof: *soft }
      batches:
        opening: { water: roof, volume: 20 L }
    `;
    checkFindings(marked);
    expect(marked.snapshot().recipe.sections.waters.get('roof')).toEqual(
      marked.snapshot().recipe.sections.waters.get('rain'),
    );
  });

  test('a second document is not read', () => {
    check(
      markedRecipe(`recipe: 1
waters: { rain: {} }
${sound}---
#<-- second-document: a file holds one recipe
recipe: 1
batches: { opening: { water: rain, volume: 3 L } }
`),
    );
  });

  test('what a merge left', () => {
    check(
      markedRecipe(`recipe: 1
<<<<<<< mine
#<----------- conflict-marker: left by a merge
waters: { rain: {} }
=======
#<------ conflict-marker: left by a merge
waters: { roof: {} }
#<----- name-duplicate: a second time
>>>>>>> theirs
#<------------- conflict-marker: left by a merge
${sound}`),
    );
  });

  test('a text that is far too long', () => {
    const note = '# nothing new today, and nothing to say about it either\n';
    const snapshot = markedRecipe(`recipe: 1\n${note.repeat(Math.ceil(5_000_000 / note.length))}`).snapshot();
    expect(snapshot.findings.map(({ finding, range }) => [finding.code, range])).toEqual([
      ['file-too-large', { from: 0, to: 1 }],
    ]);
  });

  test('a text that is another language', () => {
    const snapshot = markedRecipe('<html><body>{{ greens }}</body></html>\n').snapshot();
    expect(snapshot.findings.map(({ finding }) => finding.code)).toEqual(['yaml-invalid']);
  });

  test('a file that is no text', () => {
    const snapshot = markedRecipe('\u0089PNG\r\n\u001a\n\0\0\0\rIHDR').snapshot();
    expect(snapshot.findings.map(({ finding }) => finding.code)).toEqual(['not-yaml']);
  });

  test('lists inside lists inside lists', () => {
    const snapshot = markedRecipe(
      `recipe: 1\nx-deep: ${'['.repeat(5000)}${']'.repeat(5000)}\nwaters: { rain: {} }\n${sound}`,
    ).snapshot();
    expect(snapshot.findings.map(({ finding }) => finding.code)).toEqual(['yaml-invalid']);
    expect(dose(snapshot, 'opening', 'green')).toBe('40 mL');
  });

  test('line breaks of two characters, and a mark of byte order', () => {
    const text = `recipe: 1
waters:
  rain: { pH: 5.6, hardness: 8 }
${sound}`;
    for (const other of [text.replaceAll('\n', '\r\n'), `\uFEFF${text}`, `\uFEFF${text.replaceAll('\n', '\r\n')}`]) {
      const snapshot = markedRecipe(other).snapshot();
      const said = snapshot.findings.map(({ finding, range }) => [finding.code, other.slice(range.from, range.to)]);
      expect(said).toEqual([['key-unknown', 'hardness']]);
      expect(dose(snapshot, 'opening', 'green')).toBe('40 mL');
    }
  });

  test('characters of two units before a finding move it by two', () => {
    const text = 'recipe: 1\ntitle: 🌱🌱\nfeeds:\n  "🌱": { package: 🪣 3 galon, label: 2 mL/galon }\n';
    const snapshot = markedRecipe(text).snapshot();
    expect(snapshot.findings.map(({ finding, range }) => [finding.code, text.slice(range.from, range.to)])).toEqual([
      ['name-invalid', '"🌱"'],
      ['value-invalid', '🪣 3 galon'],
      ['unit-unknown', 'galon'],
    ]);
  });
});

test('a used file that is broken harms only what is borrowed from it', () => {
  const workspace = new Workspace();
  workspace.open('file:///main.grow.yaml', `recipe: 1\nuse: [./shelf.grow.yaml]\nwaters: { rain: {} }\n${sound}`);
  workspace.arrived('file:///shelf.grow.yaml', { kind: 'text', text: 'recipe: 1\nfeeds: { bloom: { label: 2 mL\n' });
  const snapshot = workspace.snapshot('file:///main.grow.yaml');
  expect(snapshot?.findings).toEqual([]);
  expect(snapshot && dose(snapshot, 'opening', 'green')).toBe('40 mL');
});
