import { expect, test } from 'vitest';
import { runCli } from './run-cli.ts';

const stdin = `recipe: 1
waters: { brook: { pH: 7 } }
containers:
  crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } }, net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm } }
stages:
  young: { lasts: 20 d, batch: opening, uses: 20 mL/d }
  old: { lasts: 20 d, batch: later, uses: 20 mL/d }
plantings:
  berry: { container: crock, transplant: 2027-02-20, stages: [young, old] }
batches:
  opening: { water: brook, volume: 5 L }
  later: { water: brook, volume: 5 L }
`;

test('the sheet of a batch, as text, Markdown and HTML', async () => {
  const titles = {
    text: 'Bench sheet: batch opening\n',
    markdown: '# Bench sheet: batch opening\n',
    html: '<!doctype html>\n',
  };
  for (const [format, first] of Object.entries(titles)) {
    const { code, out, err } = await runCli(['sheet', '-', '--batch', 'opening', '--format', format], { stdin });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.startsWith(first)).toBe(true);
  }
});

test('without a word it is the batch that is to be mixed next, which is said', async () => {
  // Today is 2027-03-01: the first batch was due on 20 February, the second comes on 12 March.
  const { out, err } = await runCli(['sheet', '-'], { stdin });
  expect(out).toMatch(/^Bench sheet: batch later\n/);
  expect(err).toBe('tidemark: the sheet of later, due on 2027-03-12; --batch or --day asks for another.\n');
});

test.each([
  ['2027-02-20', 'Saturday, 2027-02-20'],
  ['today', 'Monday, 2027-03-01'],
  ['tomorrow', 'Tuesday, 2027-03-02'],
])('the sheet of a day: %s', async (day, title) => {
  const { out } = await runCli(['sheet', '-', '--day', day], { stdin });
  expect(out.split('\n')[0]).toBe(`Bench sheet: ${title}`);
});

test.each([
  [['--batch', 'openin'], 'there is no batch named openin. Did you mean opening?'],
  [['--day', '1.3.2027'], '--day: `1.3.2027`: a date is written year-month-day.'],
  [['--day', '2027-02-30'], 'February 2027 has 28 days'],
  [['--day', 'today', '--batch', 'opening'], 'not for both'],
])('what is not there gives 2: %j', async (args, says) => {
  const { code, out, err } = await runCli(['sheet', '-', ...args], { stdin });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(says);
});

test('a recipe without batches has no sheet', async () => {
  const { code, err } = await runCli(['sheet', '-'], { stdin: 'recipe: 1\n' });
  expect({ code, err }).toEqual({ code: 2, err: 'tidemark: -: it has no batch to print a sheet for.\n' });
});

test('errors in the recipe give 1, and the sheet all the same', async () => {
  const { code, out } = await runCli(['sheet', '-', '--batch', 'opening'], { stdin: `${stdin}nonsense: 1\n` });
  expect(code).toBe(1);
  expect(out).toContain('Bench sheet');
});
