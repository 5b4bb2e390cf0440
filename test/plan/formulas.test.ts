import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { formulas } from '../../server/plan/formulas.ts';

const folder = join(import.meta.dirname, '..', '..', 'server', 'plan');
const declared = readdirSync(folder)
  .filter(name => name.endsWith('.ts'))
  .flatMap(name => [...readFileSync(join(folder, name), 'utf8').matchAll(/\bformula\(\{\s*id: '([^']+)'/g)])
  .flatMap(([, id]) => id ?? []);

test('the list holds every formula that is declared, each once', () => {
  expect(declared.length).toBeGreaterThan(20);
  expect([...formulas.keys()].sort()).toEqual([...declared].sort());
});

test('each says what it gives, how, and from what', () => {
  for (const row of formulas.values()) {
    expect(row.id).toMatch(/^[a-z][a-zA-Z0-9-]*$/);
    expect(row.says, row.id).toMatch(/^\S.*\S$/);
    expect(row.statement, row.id).toMatch(/ /);
    expect(Object.keys(row.takes).length, row.id).toBeGreaterThan(0);
  }
});
