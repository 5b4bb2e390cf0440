// The scripts that change the checkout: what they would write, tried on texts.

import { transformSync } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { checkText, withCheck, withRow } from '../../.ci/new-finding.ts';
import { isLater, released } from '../../.ci/release.ts';
import { textOf } from './source.ts';

describe('a new finding', () => {
  test('the catalogue gets a row that is still code', () => {
    const before = textOf('schema/findings.ts');
    const after = withRow(before, 'tide-too-high');
    expect(() => transformSync(after, { loader: 'ts' })).not.toThrow();
    expect(after.length).toBeGreaterThan(before.length);
    expect(after.replace(/\n {2}'tide-too-high': row[\s\S]*?\n {2}\}\),/, '')).toBe(before);
  });

  test('the list of checks gets the check, imported in its alphabetical place', () => {
    const after = withCheck(textOf('server/checks/checks.ts'), 'tide-too-high');
    expect(() => transformSync(after, { loader: 'ts' })).not.toThrow();
    expect(after).toContain("  'tide-too-high': tideTooHigh,\n} ");
    const imports = after.match(/(?<=^import .* from ')\.\/.*(?=';$)/gm) ?? [];
    expect(imports).toContain('./tide-too-high.ts');
    expect(imports).toEqual([...imports].sort());
  });

  test('the check is code named like its file', () => {
    expect(() => transformSync(checkText('tide-too-high'), { loader: 'ts' })).not.toThrow();
    expect(checkText('tide-too-high')).toContain('export function tideTooHigh(');
  });

  test('a catalogue of another form is left alone', () => {
    expect(() => withRow('export const findings = {};', 'tide-too-high')).toThrow();
  });
});

describe('a release', () => {
  const log = '# Changes\n\n## Unreleased\n\n* A thing.\n\n## 0.1.0 (2027-01-01)\n\n* The first.\n';

  test('what was unreleased stands under its version, and a new place above it', () => {
    expect(released(log, '0.2.0', '2027-02-01')).toBe(
      '# Changes\n\n## Unreleased\n\n## 0.2.0 (2027-02-01)\n\n* A thing.\n\n## 0.1.0 (2027-01-01)\n\n* The first.\n',
    );
  });

  test('nothing to release is refused', () => {
    expect(() => released('# Changes\n', '0.2.0', '2027-02-01')).toThrow(/Unreleased/);
    expect(() => released('# Changes\n\n## Unreleased\n\n## 0.1.0\n', '0.2.0', '2027-02-01')).toThrow(/nothing/);
  });

  test.each([
    ['0.2.0', '0.1.9', true],
    ['0.10.0', '0.9.9', true],
    ['1.0.0', '1.0.0', false],
    ['0.9.0', '1.0.0', false],
    ['1.0', '0.1.0', false],
    ['next', '0.1.0', false],
  ])('%s after %s: %s', (version, than, later) => {
    expect(isLater(version, than)).toBe(later);
  });
});
