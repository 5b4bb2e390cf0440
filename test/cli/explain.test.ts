import { expect, test } from 'vitest';
import { findingRow } from '../../schema/findings.ts';
import { findingCodes } from '../../server/reports/explain-code.ts';
import { runCli } from './run-cli.ts';

test.each(findingCodes)('%s is explained with why, fix and an example', async finding => {
  const { code, out, err } = await runCli(['explain', finding]);
  const { severity, title, why, fix } = findingRow(finding);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  for (const part of [`${finding} (${severity})\n${title}.`, why, `To fix: ${fix}`]) expect(out).toContain(part);
  expect(out).toContain('\nExample:\n');
});

test('an acid is explained with its caution', async () => {
  const { out } = await runCli(['explain', 'acid-hazard']);
  expect(out).toContain('Caution: Gloves and eye protection.');
});

test('without a code, all findings are listed, a line each', async () => {
  const { code, out } = await runCli(['explain']);
  expect(code).toBe(0);
  expect(
    out
      .trimEnd()
      .split('\n')
      .map(line => line.split(' ')[0]),
  ).toEqual(findingCodes);
});
