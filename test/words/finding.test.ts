import { expect, test } from 'vitest';
import type { Finding } from '../../schema/findings.ts';
import { findingMessage, findingWords } from '../../server/words/finding.ts';

const tooLittle: Finding = {
  code: 'dose-below-tool',
  params: {
    feed: 'moss',
    dose: { dimension: 'volume', value: 0.0002 },
    smallest: { dimension: 'volume', value: 0.005 },
    tool: 'spoon',
  },
  at: { path: [], part: { kind: 'value' } },
};

test('a message has the amounts of its case in the units of its reader', () => {
  expect(findingMessage(tooLittle, 'metric')).toContain('0.2 mL of `moss`');
  expect(findingMessage(tooLittle, 'us')).toContain('1 tsp with `spoon`');
});

test('for a hover: the title, why it matters, how to mend it, what it rests on', () => {
  expect(findingWords(tooLittle, 'metric')).toMatchInlineSnapshot(`
    {
      "fix": "Mix a larger batch, dilute the feed first, or list a finer tool.",
      "severity": "warning",
      "sources": [
        "Common practice in the trade",
      ],
      "title": "A dose too small to measure",
      "what": "0.2 mL of \`moss\` is less than your finest tool measures: 5 mL with \`spoon\`.",
      "why": "A dose below the smallest mark is a guess; its error can be larger than the dose.",
    }
  `);
});
