// The settings: what an editor sends is made complete, and the manifest says what the table says.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { withSettings } from '../../.ci/generate/settings.ts';
import { readSettings, settings } from '../../schema/settings.ts';

test('without an answer every setting has its default', () => {
  const defaults = Object.fromEntries(Object.entries(settings).map(([key, row]) => [key, row.default]));
  for (const sent of [undefined, null, 'no', 7, [], {}]) expect(readSettings(sent)).toEqual(defaults);
});

test('settings come nested, as editors send them', () => {
  const read = readSettings({ hints: { doses: false }, yamlIntegration: 'semanticOnly' });
  expect(read).toMatchObject({ 'hints.doses': false, 'hints.fills': true, yamlIntegration: 'semanticOnly' });
});

test('a value of the wrong kind counts as not sent', () => {
  const read = readSettings({ hints: { doses: 'never' }, yamlIntegration: 'constructor' });
  expect(read).toMatchObject({ 'hints.doses': true, yamlIntegration: 'auto' });
});

test('the manifest contributes the settings of the table', () => {
  const text = readFileSync(join(import.meta.dirname, '..', '..', 'package.json'), 'utf8');
  expect(JSON.parse(withSettings(text))).toEqual(JSON.parse(text));
});
