import { describe, expect, test } from 'vitest';
import { runCli } from './run-cli.ts';

const cress = `recipe: 1
waters:
  brook: { pH: 7.4, alkalinity: 70 mg/L CaCO3 }
batches:
  first: { water: brook, volume: 22 L }
`;
const bench = { 'cress.grow.yaml': cress };
const less = cress.replace('22 L', '17 L');

describe('exit codes', () => {
  test.each([
    ['a value', less, 1],
    ['a finding', cress.replace('batches:', 'strt: 1\nbatches:'), 1],
    ['a comment', `${cress}# watered on Mondays\n`, 0],
    ['nothing', cress, 0],
  ])('--exit-code where %s differs', async (_, text, expected) => {
    const files = { ...bench, 'b.grow.yaml': text };
    const { code } = await runCli(['diff', '--exit-code', 'cress.grow.yaml', 'b.grow.yaml'], { files });
    expect(code).toBe(expected);
  });

  test('a text that only reads otherwise is said to do nothing', async () => {
    const files = { ...bench, 'b.grow.yaml': cress.replace('22 L', '22000 mL') };
    const { out } = await runCli(['diff', 'cress.grow.yaml', 'b.grow.yaml'], { files });
    expect(out).toContain('The text changed; nothing that is computed from it did.');
  });
});

test('colours only where they are wanted', async () => {
  const files = { ...bench, 'b.grow.yaml': less };
  const args = ['diff', 'cress.grow.yaml', 'b.grow.yaml'];
  expect((await runCli(args, { files, isTTY: true })).out).toContain('\u001b[1m');
  expect((await runCli(args, { files, isTTY: true, env: { NO_COLOR: '1' } })).out).not.toContain('\u001b');
  expect((await runCli([...args, '--no-color'], { files, isTTY: true })).out).not.toContain('\u001b');
  expect((await runCli(args, { files })).out).not.toContain('\u001b');
});
