// Every finding is found where its example marks it, nothing else is, and the first fix gives the text that is shown as put right.

import { describe, expect, test } from 'vitest';
import { type FindingCode, findings } from '../../schema/findings.ts';
import { textOf } from '../../server/syntax/document.ts';
import { findingMessage } from '../../server/words/finding.ts';
import { checkFindings } from '../check-findings.ts';
import { drawApplied } from '../draw.ts';
import { readExample } from './example.ts';

const codes = Object.keys(findings) as readonly FindingCode[];

describe.each(codes)('%s', code => {
  const { marked, plain, fixed } = readExample(code);

  test('is found where it is marked, and nothing else is', () => {
    expect(marked.files.flatMap(({ marks }) => marks.map(mark => mark.code))).toContain(code);
    checkFindings(marked);
  });

  test('is marked with the whole of what it says, as its page shows the marks', () => {
    for (const { uri, marks } of marked.files) {
      const { findings: found, recipe } = marked.snapshot(uri);
      const messages = found.map(({ finding }) => findingMessage(finding, recipe.show));
      for (const { says } of marks) expect(messages).toContain(says);
    }
  });

  test('is gone where the example is put right', () => {
    const snapshot = plain.snapshot();
    const found = snapshot.findings.find(({ finding }) => finding.code === code);
    const [fix] = found?.finding.fixes ?? [];
    if (fix !== undefined) {
      expect(drawApplied(textOf(snapshot.document), fix.edits)).toBe(fixed?.files[0].text);
    }
    const left = fixed?.snapshot().findings.map(({ finding }) => finding.code) ?? [];
    expect(left).not.toContain(code);
  });
});
