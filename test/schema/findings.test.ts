// How findings speak: whole sentences in a grower's words. What they say of a case is checked on the case of their example.

import { describe, expect, test } from 'vitest';
import { type FindingCode, findingRow, findings, sayWhat } from '../../schema/findings.ts';
import { showIn } from '../../server/words/amount.ts';
import { readExample } from '../findings/example.ts';

const codes = Object.keys(findings) as readonly FindingCode[];

/** Words of the workshop that a grower need not know. */
const workshop =
  /\b(?:undefined|null|NaN|parse[ds]?|parser|token|scalar|string|boolean|integer|schema|node|regex|object)\b/u;
const sentence = /^[A-Z`\d].*[.?]$/u;

describe.each(codes)('%s', code => {
  const { title, why, fix, caution } = findingRow(code);

  test('says in sentences why it matters and what to do', () => {
    expect(title).toMatch(/^[A-Z].*[^.]$/u);
    for (const text of [why, fix, ...(caution === undefined ? [] : [caution])]) {
      expect(text).toMatch(sentence);
      expect(text).not.toMatch(/ {2}|'/u);
      expect(text).not.toMatch(workshop);
    }
  });

  test('says in sentences what is wrong', () => {
    const snapshot = readExample(code).marked.snapshot();
    const said = snapshot.findings
      .filter(({ finding }) => finding.code === code)
      .map(({ finding }) => sayWhat(finding, showIn(snapshot.recipe.show)));
    expect(said).not.toEqual([]);
    for (const text of said) {
      expect(text).toMatch(sentence);
      expect(text).not.toMatch(workshop);
    }
  });
});
