import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { checkJson } from '../../schema/finding-json.ts';
import { folderWith, runCli } from './run-cli.ts';

const clean = `recipe: 1
waters:
  brook: { pH: 7.1, alkalinity: 1 meq/L }
batches:
  cress: { water: brook, volume: 4 L }
`;
const wrong = `recipe: 1
waters:
  brook: { pH: 7.1, alkalinity: 1 meq/L }
batches:
  cress: { water: brok, volume: 4 cm }
`;

test('a clean recipe gives 0 and says how many were checked', async () => {
  const answer = await runCli(['check', 'a.grow.yaml'], { files: { 'a.grow.yaml': clean } });
  expect(answer).toEqual({ code: 0, out: '1 recipe checked, nothing found.\n', err: '' });
});

test('findings are shown with their line, the place marked and how to mend it', async () => {
  const { code, out } = await runCli(['check', 'a.grow.yaml'], { files: { 'a.grow.yaml': wrong } });
  expect(code).toBe(1);
  expect(out).toMatchInlineSnapshot(`
    "a.grow.yaml:5:19 error name-unknown
      There is no water named \`brok\`. Did you mean \`brook\`?
        5 |   cress: { water: brok, volume: 4 cm }
          |                   ~~~~
      To fix: Change to \`brook\`. Correct the name, add the entry, or borrow the file that has it by \`use\`.

    a.grow.yaml:5:35 error unit-mismatch
      \`cm\` is the unit of a length; a volume belongs here.
        5 |   cress: { water: brok, volume: 4 cm }
          |                                   ~~
      To fix: Write a unit of the kind that the key takes.

    1 recipe checked: 2 errors.
    "
  `);
});

test('the same as JSON, for programs', async () => {
  const { code, out } = await runCli(['check', '--format', 'json', 'a.grow.yaml'], { files: { 'a.grow.yaml': wrong } });
  expect(code).toBe(1);
  const { formatVersion, files, findings } = JSON.parse(out);
  expect({ formatVersion, files }).toEqual({ formatVersion: 1, files: ['a.grow.yaml'] });
  expect(findings).toContainEqual({
    code: 'name-unknown',
    severity: 'error',
    message: 'There is no water named `brok`. Did you mean `brook`?',
    file: 'a.grow.yaml',
    range: { start: { line: 4, character: 18 }, end: { line: 4, character: 22 } },
    help: expect.stringContaining('Correct the name'),
  });
});

test('a folder is searched for recipes; hidden folders, modules and other files are passed over', async () => {
  const files = {
    'a.grow.yaml': clean,
    'b.grow.yml': clean,
    'sub/deeper/c.grow.yaml': clean,
    'notes.yaml': 'a: [',
    'node_modules/d.grow.yaml': wrong,
    '.hidden/e.grow.yaml': wrong,
    '.f.grow.yaml': wrong,
  };
  const { code, out } = await runCli(['check', '--format', 'json'], { files });
  expect(checkJson.parse(JSON.parse(out))).toEqual(JSON.parse(out));
  expect(code).toBe(0);
  expect(JSON.parse(out).files).toEqual(['a.grow.yaml', 'b.grow.yml', 'sub/deeper/c.grow.yaml']);
});

test('a file that is named is read whatever its name, and once however often it is named', async () => {
  const { out } = await runCli(['check', '--format', 'json', 'x.yaml', './x.yaml', '.'], {
    files: { 'x.yaml': clean, 'y.grow.yaml': clean },
  });
  expect(JSON.parse(out).files).toEqual(['x.yaml', 'y.grow.yaml']);
});

test('spaces and accents in paths', async () => {
  const files = {
    'Gärten 2/über + den Dächern.grow.yaml': `recipe: 1\nuse: [./regal é%20.grow.yaml]\nbatches:\n  b: { water: quelle, volume: 4 L }\n`,
    'Gärten 2/regal é%20.grow.yaml': 'recipe: 1\nwaters:\n  quelle: { pH: 7 }\n',
  };
  const answer = await runCli(['check', 'Gärten 2'], { files });
  expect(answer.out).not.toContain('error');
  expect(answer.code).toBe(0);
});

test.each([
  ['error', 1],
  ['warning', 1],
  ['never', 0],
] as const)('--fail-on %s with an error gives %i', async (least, code) => {
  const answer = await runCli(['check', '--fail-on', least], { files: { 'a.grow.yaml': wrong } });
  expect(answer.code).toBe(code);
  expect(answer.out).toContain('name-unknown');
});

test('a hint fails only where hints are asked to', async () => {
  const used = 'stages:\n  leaf: { lasts: 9 d, batch: cress }\n';
  const unused = 'feeds:\n  spare: { analysis: { N: 1 % } }\n';
  const planted = `${clean}${used}plantings:\n  p: { container: jug, fill: 9 cm, stages: [leaf] }\n`;
  const jug = 'containers:\n  jug: { opaque: true, inside: { cylinder: { diameter: 9 cm, height: 20 cm } } }\n';
  const files = { 'a.grow.yaml': `${planted}${jug}${unused}` };
  const { out } = await runCli(['check'], { files });
  expect(out).toContain('hint name-unused');
  expect((await runCli(['check', '--fail-on', 'information'], { files })).code).toBe(0);
  expect((await runCli(['check', '--fail-on', 'hint'], { files })).code).toBe(1);
});

test('standard input is `-`', async () => {
  expect((await runCli(['check', '-'], { stdin: clean })).code).toBe(0);
  const { code, out } = await runCli(['check', '-'], { stdin: wrong });
  expect(code).toBe(1);
  expect(out).toContain('-:5:19 error name-unknown');
});

test('standard input with a name follows `use` from there', async () => {
  const { code, out } = await runCli(['check', '-', '--stdin-filename', 'rows/new.grow.yaml'], {
    files: { 'rows/shelf.grow.yaml': 'recipe: 1\nwaters:\n  brook: { pH: 7.1 }\n' },
    stdin: 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches:\n  b: { water: brok, volume: 4 L }\n',
  });
  expect(code).toBe(1);
  expect(out).toContain('rows/new.grow.yaml:4:15 error name-unknown');
  expect(out).toContain('Did you mean `brook`?');
});

test('a missing file gives 2, and the others are checked all the same', async () => {
  const { code, out, err } = await runCli(['check', 'gone.grow.yaml', 'a.grow.yaml'], {
    files: { 'a.grow.yaml': clean },
  });
  expect(code).toBe(2);
  expect(err).toBe('tidemark: gone.grow.yaml: there is no such file\n');
  expect(out).toBe('1 recipe checked, nothing found.\n');
});

test('a file that cannot be read gives 2 with its reason', async () => {
  const folder = folderWith({});
  symlinkSync('loop.grow.yaml', join(folder, 'loop.grow.yaml'));
  const { code, out, err } = await runCli(['check', 'loop.grow.yaml'], { folder });
  expect({ code, out, err }).toEqual({
    code: 2,
    out: '',
    err: 'tidemark: loop.grow.yaml: it cannot be read (ELOOP)\n',
  });
});

test('a folder without a recipe gives 2: a check of nothing must not pass', async () => {
  const { code, err } = await runCli(['check', 'empty'], { files: { 'empty/readme.txt': '' } });
  expect(code).toBe(2);
  expect(err).toBe('tidemark: empty: there is no recipe (*.grow.yaml, *.grow.yml) in this folder\n');
});

test.each([
  ['zeros', new Uint8Array([0x72, 0, 1, 2, 0xff])],
  ['Latin-1', Buffer.from('recipe: 1\ntitle: caf\u00e9\n', 'latin1')],
  ['UTF-16', Buffer.from('\ufeffrecipe: 1\n', 'utf16le')],
])('%s is not text: a finding, not a crash', async (_, bytes) => {
  const { code, out } = await runCli(['check', '--format', 'json'], { files: { 'a.grow.yaml': bytes } });
  expect(code).toBe(1);
  expect(JSON.parse(out).findings.map((finding: { code: string }) => finding.code)).toEqual(['not-yaml']);
});

test('a byte order mark, CRLF and a single replacement character are text', async () => {
  const text = `\ufeff${clean.replaceAll('\n', '\r\n')}# \ufffd\r\n`;
  expect((await runCli(['check'], { files: { 'a.grow.yaml': text } })).code).toBe(0);
});

test('control characters of a file do not reach the terminal', async () => {
  const { out } = await runCli(['check'], { files: { 'a.grow.yaml': 'recipe: 1\n"\u001b[2Jx\u202e": 1\n' } });
  expect(out).toContain('key-unknown');
  expect([...out].filter(sign => sign < ' ' && sign !== '\n')).toEqual([]);
  expect(out).not.toContain('\u202e');
});

test('`use` reaches as far as the repository and not beyond, through links neither', async () => {
  const folder = folderWith({
    'repo/rows/a.grow.yaml':
      'recipe: 1\nuse: [../shelf.grow.yaml, ../../out.grow.yaml, ./link.grow.yaml, ./none.grow.yaml]\n',
    'repo/shelf.grow.yaml': 'recipe: 1\n',
    'out.grow.yaml': 'recipe: 1\n',
  });
  mkdirSync(join(folder, 'repo/.git'));
  symlinkSync(join(folder, 'out.grow.yaml'), join(folder, 'repo/rows/link.grow.yaml'));
  const { out } = await runCli(['check', '--format', 'json', 'repo/rows/a.grow.yaml'], { folder });
  const messages = JSON.parse(out).findings.map((finding: { message: string }) => finding.message);
  expect(messages.map((message: string) => message.split('`')[1])).toEqual([
    '../../out.grow.yaml',
    './link.grow.yaml',
    './none.grow.yaml',
  ]);
  expect(messages.map((message: string) => /outside|no file/u.exec(message)?.[0])).toEqual([
    'outside',
    'outside',
    'no file',
  ]);
});
