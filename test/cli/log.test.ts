import { chmodSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, runCli } from './run-cli.ts';

const bench = `recipe: 1 # the bench
waters: { brook: { pH: 7 } }
adjusters: { down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L } }
plantings:
  berry: { container: crock, transplant: 2027-02-20 }
batches:
  opening: { water: brook, volume: 20 L }
log:
  - { on: 2027-02-25, planting: berry, pH: 6.0 } # sunny
`;
const files = { 'bench.grow.yaml': bench };
const berry = ['log', 'bench.grow.yaml', '--planting', 'berry'];

test('without --write it shows the entry and where it would stand', async () => {
  const folder = folderWith(files);
  const answer = await runCli([...berry, '--pH', '6.2', '--EC', '1.3 mS/cm', '--level', '11 cm'], { folder });
  expect(answer).toEqual({
    code: 0,
    out: 'bench.grow.yaml, line 10:\n  - { on: 2027-03-01, planting: berry, pH: 6.2, EC: 1.3 mS/cm, level: 11 cm }\n',
    err: '',
  });
  expect(readFileSync(join(folder, 'bench.grow.yaml'), 'utf8')).toBe(bench);
});

test('with --write it stands in the file, and nothing else has changed', async () => {
  const folder = folderWith(files);
  const args = [
    ...berry,
    '--on',
    '2027-03-04',
    '--top-up',
    '400 mL',
    '--from',
    'opening',
    '--note',
    'thinned, at last',
    '--write',
  ];
  expect(await runCli(args, { folder })).toEqual({
    code: 0,
    out: '',
    err: 'tidemark: bench.grow.yaml: line 10 written.\n',
  });
  expect(readFileSync(join(folder, 'bench.grow.yaml'), 'utf8')).toBe(
    `${bench}  - { on: 2027-03-04, planting: berry, top-up: { batch: opening, volume: 400 mL }, note: "thinned, at last" }\n`,
  );
  expect(readdirSync(folder).sort()).toEqual(['.git', 'bench.grow.yaml']);
});

test('a reading of a batch goes to its readings', async () => {
  const args = ['log', 'bench.grow.yaml', '--batch', 'opening', '--add', 'down 4 mL', '--pH', '6.6'];
  const { out, err } = await runCli(args, { files });
  expect(err).toMatch(/^tidemark: caution with down: .*Pour acid into water/);
  expect(out).toBe(
    'bench.grow.yaml, line 7:\n  opening: { water: brook, volume: 20 L, readings: [{ add: { down: 4 mL }, pH: 6.6 }] }\n',
  );
});

test('the file keeps its permissions, and a link keeps pointing to it', async () => {
  const folder = folderWith(files);
  chmodSync(join(folder, 'bench.grow.yaml'), 0o640);
  symlinkSync('bench.grow.yaml', join(folder, 'today.grow.yaml'));
  const { code } = await runCli(['log', 'today.grow.yaml', '--planting', 'berry', '--pH', '6', '--write'], { folder });
  expect(code).toBe(0);
  expect(statSync(join(folder, 'bench.grow.yaml')).mode & 0o777).toBe(0o640);
  expect(readFileSync(join(folder, 'today.grow.yaml'), 'utf8')).toContain('pH: 6 }');
  expect(readFileSync(join(folder, 'bench.grow.yaml'), 'utf8')).toContain('pH: 6 }');
});

const season = bench.replace(
  /log:[\s\S]*/,
  `log:
  - { on: 2027-02-21, planting: berry, pH: 6.0 } # sunny
  # the week of the frost
  - { on: 2027-02-25, planting: berry, pH: 6.1 }
`,
);

test.each([
  ['2027-02-20', 9],
  ['2027-02-21', 10],
  ['2027-02-23', 10],
  ['2027-02-25', 12],
  ['2027-02-27', 12],
])('an entry goes to its day in a log that is in order: %s on line %d', async (on, line) => {
  const folder = folderWith({ 'bench.grow.yaml': season });
  const { code, err } = await runCli([...berry, '--on', on, '--pH', '6.2', '--write'], { folder });
  expect({ code, err }).toEqual({ code: 0, err: `tidemark: bench.grow.yaml: line ${line} written.\n` });
  const lines = readFileSync(join(folder, 'bench.grow.yaml'), 'utf8').split('\n');
  expect(lines.splice(line - 1, 1)).toEqual([`  - { on: ${on}, planting: berry, pH: 6.2 }`]);
  expect(lines.join('\n')).toBe(season);
});

test('in a log that is in no order an entry goes to the end, with a note', async () => {
  const mixed = season.replace('2027-02-21', '2027-02-28');
  const { code, err, out } = await runCli([...berry, '--on', '2027-02-23', '--pH', '6.2'], {
    files: { 'bench.grow.yaml': mixed },
  });
  expect(code).toBe(0);
  expect(out).toMatch(/^bench\.grow\.yaml, line 12:\n/);
  expect(err).toMatch(/^tidemark: note: .*2027-02-23/);
});

test('bytes that are no UTF-8 are not lost: nothing is written', async () => {
  const bytes = Buffer.concat([Buffer.from(bench), Buffer.from([0x23, 0xe9, 0x0a])]);
  const folder = folderWith({ 'bench.grow.yaml': bytes });
  const { code } = await runCli([...berry, '--pH', '6.2', '--write'], { folder });
  expect(code).toBe(2);
  expect(readFileSync(join(folder, 'bench.grow.yaml')).equals(bytes)).toBe(true);
});

test.each([
  [['--planting', 'bery', '--pH', '6'], '--planting: there is no planting named bery. Did you mean berry?'],
  [['--batch', 'openin', '--pH', '6'], '--batch: there is no batch named openin. Did you mean opening?'],
  [['--planting', 'berry', '--pH', '6,2'], '--pH: '],
  [['--planting', 'berry', '--pH', '15'], '--pH: '],
  [['--planting', 'berry', '--EC', '1.3 mL'], '--EC: '],
  [['--planting', 'berry', '--level', '11'], '--level: '],
  [['--planting', 'berry', '--on', '1.3.2027', '--pH', '6'], '--on: '],
  [['--planting', 'berry', '--top-up', '4 cm', '--from', 'opening'], '--top-up: '],
  [['--planting', 'berry', '--top-up', '400 mL', '--from', 'brook'], '--from: there is no batch named brook.'],
  [
    ['--planting', 'berry', '--top-up', '400 mL', '--water', 'brok'],
    '--water: there is no water named brok. Did you mean brook?',
  ],
  [
    ['--planting', 'berry', '--top-up', '400 mL', '--from', 'opening', '--water', 'brook'],
    'from one batch or is one plain water',
  ],
  [['--planting', 'berry', '--top-up', '400 mL'], '--from BATCH or --water NAME'],
  [['--planting', 'berry', '--from', 'opening'], '--top-up VOLUME'],
  [['--planting', 'berry'], 'there is nothing to record'],
  [['--batch', 'opening'], 'there is nothing to record'],
  [['--pH', '6'], '--planting NAME'],
  [['--planting', 'berry', '--batch', 'opening', '--pH', '6'], 'not about both'],
  [['--batch', 'opening', '--level', '4 cm'], '--level belongs to a --planting'],
  [['--planting', 'berry', '--add', 'down 4 mL'], '--add belongs to a --batch'],
  [['--batch', 'opening', '--add', 'down'], '--add: `down` does not say'],
  [['--batch', 'opening', '--add', 'dwn 4 mL'], 'there is no adjuster or feed named dwn. Did you mean down?'],
])('what does not fit is said and gives 2: %j', async (args, says) => {
  const folder = folderWith(files);
  const { code, out, err } = await runCli(['log', 'bench.grow.yaml', ...args, '--write'], { folder });
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(says);
  expect(readFileSync(join(folder, 'bench.grow.yaml'), 'utf8')).toBe(bench);
});

test('standard input can be shown and not written', async () => {
  const { code, out } = await runCli(['log', '-', '--planting', 'berry', '--pH', '6'], { stdin: bench });
  expect({ code, out }).toEqual({ code: 0, out: '-, line 10:\n  - { on: 2027-03-01, planting: berry, pH: 6 }\n' });
  const refused = await runCli(['log', '-', '--planting', 'berry', '--pH', '6', '--write'], { stdin: bench });
  expect(refused.code).toBe(2);
});

test('a file whose YAML leaves no place for an entry is refused whole', async () => {
  const { code, err } = await runCli([...berry, '--pH', '6'], {
    files: { 'bench.grow.yaml': bench.replace(/log:[\s\S]*/, 'log: none\n') },
  });
  expect(code).toBe(2);
  expect(err).toContain('write there by hand: - { on: 2027-03-01, planting: berry, pH: 6 }');
});
