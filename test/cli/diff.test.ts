import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { diffJson } from '../../schema/diff-json.ts';
import { repository } from './repository.ts';
import { folderWith, runCli } from './run-cli.ts';

const shelf = `recipe: 1
waters:
  brook: { pH: 7.4, alkalinity: 70 mg/L CaCO3 }
feeds:
  stem: { label: 2 mL/L, analysis: { N: 5 % }, nitrogen: { nitrate: 5 % }, density: 1.15 kg/L }
adjusters:
  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
tools:
  syringe: { smallest: 0.5 mL, largest: 10 mL }
`;
const cress = `recipe: 1
title: Cress under the stairs
start: 2027-02-01
use: [./shelf.grow.yaml]
containers:
  crate: { inside: { box: { length: 30 cm, width: 20 cm, height: 20 cm } }, net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm } }
stages:
  leaf: { lasts: 30 d, batch: first, uses: 50 mL/d }
plantings:
  cress: { container: crate, count: 2, fill: to net cup, stages: [leaf] }
batches:
  first: { water: brook, volume: 22 L, feed: { stem: label } }
`;
const bench = { 'cress.grow.yaml': cress, 'shelf.grow.yaml': shelf };
const less = cress.replace('22 L', '17 L');

test('a change of a file since the last commit', async () => {
  const { folder, put, commit } = repository(bench);
  commit();
  put({ 'cress.grow.yaml': less });
  const { code, out, err } = await runCli(['diff', 'HEAD', 'cress.grow.yaml'], { folder });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatchInlineSnapshot(`
    "HEAD -> cress.grow.yaml
    5 values change, 30 stay the same; 1 finding appears.

    cress.grow.yaml

      batch first
        volume                22 L  -> 17 L   -5 L (-23 %)  [1]
        left after its fills  4 L   -> -1 L   -5 L  [1]
        dose of stem          44 mL -> 34 mL  -10 mL (-23 %)  [1]
        measuring of stem     4 × 10 mL and 4 mL with syringe -> 3 × 10 mL and 4 mL with syringe  [1]

      supply stem
        used                  44 mL -> 36 mL  -8 mL (-18 %)  [1]

      Because
        [1] batches › first › volume: 22 L, now 17 L (cress.grow.yaml:12)

      Findings
        + error batch-too-small at batches › first › volume: \`first\` makes 17 L, and the fills it serves take 18 L: 1 L short.

    Computed values are estimates; labels and meters decide.
    "
  `);
});

test('the same as a comment for a pull request', async () => {
  const { folder, put, commit } = repository(bench);
  commit();
  put({ 'cress.grow.yaml': less });
  const { out } = await runCli(['diff', 'HEAD', 'cress.grow.yaml', '--format', 'markdown'], { folder });
  expect(out).toMatchInlineSnapshot(`
    "<!-- tidemark review -->

    **5 values change, 30 stay the same; 1 finding appears.**

    \`HEAD\` → \`cress.grow.yaml\`

    #### cress.grow.yaml

    - appears: error batch-too-small at batches › first › volume: \\\`first\\\` makes 17 L, and the fills it serves take 18 L: 1 L short.

    | Of | What | Before | After | Change | Because |
    | --- | --- | ---: | ---: | ---: | --- |
    | batch first | volume | 22 L | 17 L | -5 L (-23 %) | (1) |
    | batch first | left after its fills | 4 L | -1 L | -5 L | (1) |
    | batch first | dose of stem | 44 mL | 34 mL | -10 mL (-23 %) | (1) |
    | batch first | measuring of stem | 4 × 10 mL and 4 mL with syringe | 3 × 10 mL and 4 mL with syringe |  | (1) |
    | supply stem | used | 44 mL | 36 mL | -8 mL (-18 %) | (1) |

    Because of what is written:

    - (1) batches › first › volume: 22 L, now 17 L, \`cress.grow.yaml:12\`

    <details><summary>30 values stay the same</summary>

    - batch first: water, loads, N, N as nitrate, N as ammonium, N as urea, pH as mixed, pH after standing in air, EC as mixed
    - planting cress: container, fill level, fill of a container, containers, all fills, highest level to refill to, leaf begins, leaf is fed, harvest, one fill lasts, top-ups to come, level on the last day, EC on the last day
    - container crate: brimful, level of the net cup, volume to the net cup
    - supply stem: packages
    - tasks of first: mix first
    - tasks of cress: fill the containers of cress with first, set the plugs of cress over the solution; a plug is ready when its first root shows, harvest cress

    </details>

    _Computed values are estimates; labels and meters decide._
    "
  `);
});

test('the same for programs: raw numbers, their unit, and what people are shown', async () => {
  const { folder, put, commit } = repository(bench);
  commit();
  put({ 'cress.grow.yaml': less });
  const { out } = await runCli(['diff', 'HEAD', 'cress.grow.yaml', '--format', 'json'], { folder });
  const json = JSON.parse(out);
  expect(diffJson.parse(json)).toEqual(json);
  expect(json).toMatchObject({ formatVersion: 1, before: 'HEAD', after: 'cress.grow.yaml', untouched: 0 });
  expect(json.files[0].changes[1]).toMatchInlineSnapshot(`
    {
      "after": -1,
      "because": [
        0,
      ],
      "before": 4,
      "change": -5,
      "group": "batch",
      "name": "first",
      "percent": null,
      "shown": {
        "after": "-1 L",
        "before": "4 L",
        "change": "-5 L",
      },
      "unit": "L",
      "what": "left after its fills",
    }
  `);
  expect(json.files[0].causes).toMatchInlineSnapshot(`
    [
      {
        "after": "17 L",
        "before": "22 L",
        "file": "cress.grow.yaml",
        "line": 12,
        "path": [
          "batches",
          "first",
          "volume",
        ],
        "side": "after",
      },
    ]
  `);
  expect(JSON.stringify(json)).not.toContain(folder);
});

test('the same as a page', async () => {
  const { folder, put, commit } = repository(bench);
  commit();
  put({ 'cress.grow.yaml': less });
  const { out } = await runCli(['diff', 'HEAD', 'cress.grow.yaml', '--format', 'html'], { folder });
  expect(out).toContain('<td class="number">22 L</td><td class="number">17 L</td>');
  expect(out).not.toMatch(/<script|https?:/u);
});

describe('what is used is read at the same revision', () => {
  test('a change of the shelf shows in what uses it', async () => {
    const { folder, put, commit } = repository({ ...bench, 'other.grow.yaml': 'recipe: 1\nbatches: {}\n' });
    commit();
    put({ 'shelf.grow.yaml': shelf.replace('label: 2 mL/L', 'label: 3 mL/L') });
    commit();
    const { out } = await runCli(['diff', 'HEAD~1', 'HEAD'], { folder });
    expect(out).toMatchInlineSnapshot(`
      "HEAD~1 -> HEAD
      9 values change, 26 stay the same; 1 recipe is untouched.

      cress.grow.yaml

        batch first
          dose of stem              44 mL      -> 66 mL       +22 mL (+50 %)  [1]
          measuring of stem         4 × 10 mL and 4 mL with syringe -> 6 × 10 mL and 6 mL with syringe  [1]
          N                         115 mg/L   -> 173 mg/L    +58 mg/L (+50 %)  [1]
          N as nitrate              115 mg/L   -> 173 mg/L    +58 mg/L (+50 %)  [1]
          pH as mixed               7.37       -> 7.36        -0.01  [1]
          pH after standing in air  8.26       -> 8.25        -0.01  [1]
          EC as mixed               1.06 mS/cm -> 1.51 mS/cm  +0.45 mS/cm (+43 %)  [1]

        planting cress
          EC on the last day        1.03 mS/cm -> 1.57 mS/cm  +0.54 mS/cm (+52 %)  [1]

        supply stem
          used                      44 mL      -> 66 mL       +22 mL (+50 %)  [1]

        Because
          [1] feeds › stem › label: 2 mL/L, now 3 mL/L (HEAD:shelf.grow.yaml:5)

      shelf.grow.yaml
        The text changed; nothing is computed in this file itself.

      Computed values are estimates; labels and meters decide.
      "
    `);
  });

  test('folders are compared file by file', async () => {
    const files = {
      'last year/cress.grow.yaml': cress,
      'last year/shelf.grow.yaml': shelf,
      'this year/cress.grow.yaml': cress,
      'this year/shelf.grow.yaml': shelf.replace('label: 2 mL/L', 'label: 3 mL/L'),
    };
    const { out } = await runCli(['diff', 'last year', 'this year'], { files });
    expect(out).toMatch(/dose of stem +44 mL +-> 66 mL +\+22 mL \(\+50 %\)/u);
    expect(out).toContain('feeds › stem › label: 2 mL/L, now 3 mL/L (this year/shelf.grow.yaml:5)');
  });
});

describe('files on one side only', () => {
  test('new, gone, and moved', async () => {
    const { folder, put, commit, git } = repository({ ...bench, 'old.grow.yaml': cress.replace('Cress', 'Old cress') });
    commit();
    git('mv', 'cress.grow.yaml', 'porch.grow.yaml');
    put({
      'porch.grow.yaml': less,
      'new.grow.yaml': 'recipe: 1\nbatches:\n  b: { volume: 3 L }\n',
      'old.grow.yaml': null,
    });
    git('add', '--all');
    const { code, out } = await runCli(['diff', 'HEAD', '.'], { folder });
    expect(code).toBe(0);
    expect(out.split('\n').filter(line => /^\S|recipe is|It was|volume/u.test(line))).toMatchInlineSnapshot(`
      [
        "HEAD -> .",
        "5 values change, 30 stay the same; 2 findings appear; 1 recipe is new, 1 recipe is gone, 1 recipe is untouched.",
        "new.grow.yaml",
        "  This recipe is new: 5 values computed.",
        "porch.grow.yaml",
        "  It was cress.grow.yaml.",
        "    volume                22 L  -> 17 L   -5 L (-23 %)  [1]",
        "    [1] batches › first › volume: 22 L, now 17 L (porch.grow.yaml:12)",
        "    + error batch-too-small at batches › first › volume: \`first\` makes 17 L, and the fills it serves take 18 L: 1 L short.",
        "old.grow.yaml",
        "  This recipe is gone: 35 values computed before.",
        "Computed values are estimates; labels and meters decide.",
      ]
    `);
  });

  test('a file that was moved is found under its old name', async () => {
    const { folder, commit, git } = repository(bench);
    commit();
    git('mv', 'cress.grow.yaml', 'porch.grow.yaml');
    const { out } = await runCli(['diff', 'HEAD', 'porch.grow.yaml'], { folder });
    expect(out).toContain('It was cress.grow.yaml.');
    expect(out).toContain('No value changes');
  });

  test('a file that is new since is said to be new', async () => {
    const { folder, put, commit } = repository({ 'shelf.grow.yaml': shelf });
    commit();
    put({ 'cress.grow.yaml': cress });
    const { code, out } = await runCli(['diff', 'HEAD', 'cress.grow.yaml'], { folder });
    expect({ code, new: out.includes('This recipe is new') }).toEqual({ code: 0, new: true });
  });

  test('a file that is gone since is said to be gone', async () => {
    const { folder, put, commit } = repository(bench);
    commit();
    put({ 'cress.grow.yaml': null });
    const { code, out } = await runCli(['diff', 'HEAD:cress.grow.yaml'], { folder });
    expect({ code, gone: out.includes('This recipe is gone') }).toEqual({ code: 0, gone: true });
  });
});

describe('sides', () => {
  test('a path in a folder with spaces and accents, counted from where one stands or from the root', async () => {
    const at = 'Küche und Hof/süß.grow.yaml';
    const { folder, put, commit } = repository({ [at]: cress, 'Küche und Hof/shelf.grow.yaml': shelf });
    commit();
    put({ [at]: less });
    const inside = join(folder, 'Küche und Hof');
    for (const args of [
      ['HEAD', 'süß.grow.yaml'],
      [`HEAD:${at}`, 'süß.grow.yaml'],
      ['HEAD:süß.grow.yaml', './süß.grow.yaml'],
      ['HEAD:./süß.grow.yaml'],
      ['HEAD', '.'],
    ]) {
      const { code, out, err } = await runCli(['diff', ...args], { folder: inside });
      expect({ args, code, err }).toEqual({ args, code: 0, err: '' });
      expect(out).toMatch(/volume +22 L +-> 17 L/u);
    }
  });

  test('standard input is one side', async () => {
    const { code, out } = await runCli(['diff', 'cress.grow.yaml', '-', '--stdin-filename', 'cress.grow.yaml'], {
      files: bench,
      stdin: less,
    });
    expect(code).toBe(0);
    expect(out).toMatch(/dose of stem +44 mL +-> 34 mL/u);
  });

  test.each([
    [['mian', 'cress.grow.yaml'], 'mian: there is neither a file nor a revision of this name'],
    [['mian:cress.grow.yaml', 'cress.grow.yaml'], 'mian:cress.grow.yaml: there is no revision mian'],
    [['HEAD:kale.grow.yaml', 'cress.grow.yaml'], 'kale.grow.yaml is not in HEAD'],
    [['cress.grow.yaml', 'kale.grow.yaml'], 'kale.grow.yaml: there is no such file'],
    [['cress.grow.yaml', '.'], 'a file is compared with a file, and a folder with a folder.'],
    [['-', '-'], 'standard input can be one side only.'],
    [['cress.grow.yaml'], 'say what cress.grow.yaml is to be compared with'],
    [['HEAD:empty', 'empty'], 'empty is not in HEAD'],
  ])('%j: %s', async (args, says) => {
    const { folder, commit } = repository(bench);
    commit();
    mkdirSync(join(folder, 'empty'));
    const { code, out, err } = await runCli(['diff', ...args], { folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });

  test('a repository without commits, and none at all', async () => {
    const empty = await runCli(['diff', 'HEAD', 'cress.grow.yaml'], { folder: repository(bench).folder });
    expect(empty).toEqual({ code: 2, out: '', err: 'tidemark: HEAD: the repository has no commits yet\n' });
    // A `.git` that is no repository keeps git from looking further up.
    const none = await runCli(['diff', 'HEAD', 'cress.grow.yaml'], { folder: folderWith(bench) });
    expect({ code: none.code, out: none.out }).toEqual({ code: 2, out: '' });
    expect(none.err).toContain('HEAD: there is no such file, and ');
  });

  test('without git, files and folders are still compared', async () => {
    const { folder, commit, put } = repository(bench);
    commit();
    put({ 'less.grow.yaml': less });
    vi.stubEnv('PATH', folder);
    onTestFinished(() => void vi.unstubAllEnvs());
    expect(await runCli(['diff', 'HEAD:cress.grow.yaml', 'cress.grow.yaml'], { folder })).toMatchObject({
      code: 2,
      err: 'tidemark: HEAD:cress.grow.yaml: the program git is not found\n',
    });
    const { code, out } = await runCli(['diff', 'cress.grow.yaml', 'less.grow.yaml'], { folder });
    expect({ code, changes: out.includes('22 L  -> 17 L') }).toEqual({ code: 0, changes: true });
  });
});

describe('a side that cannot be read is said, and the rest compared', () => {
  test.each([
    ['not a text file', 'recipe: 1\0'],
    ['conflict markers', `<<<<<<< ours\n${cress}=======\n${less}>>>>>>> theirs\n`],
    ['a version of the format', cress.replace('recipe: 1', 'recipe: 7')],
  ])('%s', async (says, text) => {
    const { folder, put, commit } = repository({ ...bench, 'other.grow.yaml': cress });
    commit();
    put({ 'cress.grow.yaml': text, 'other.grow.yaml': less });
    const { code, out } = await runCli(['diff', 'HEAD', '.'], { folder });
    expect(code).toBe(2);
    expect(out).toContain('1 recipe cannot be compared');
    expect(out).toContain(`After: cress.grow.yaml cannot be read: it `);
    expect(out).toContain(says);
    expect(out).toMatch(/volume +22 L +-> 17 L/u);
  });

  test('broken lines are named, since what they hide is missing', async () => {
    const broken = cress.replace('crate: { inside', 'crate: { inside"');
    const { out } = await runCli(['diff', 'a.grow.yaml', 'b.grow.yaml'], {
      files: { ...bench, 'a.grow.yaml': cress, 'b.grow.yaml': broken.replace('} }, net-cup', '} , net-cup') },
    });
    expect(out).toContain('After: the text is not valid YAML in one place; what stands there counts as not written.');
  });
});

test('a finding that stays with another amount is told as changed, and one that is mended disappears', async () => {
  const files = { ...bench, 'a.grow.yaml': less, 'b.grow.yaml': cress.replace('22 L', '16 L') };
  const worse = await runCli(['diff', 'a.grow.yaml', 'b.grow.yaml'], { files });
  expect(worse.out.split('\n').filter(line => / finding|[~] |before:/u.test(line))).toMatchInlineSnapshot(`
    [
      "4 values change, 31 stay the same; 1 finding changes.",
      "    ~ error batch-too-small at batches › first › volume: \`first\` makes 16 L, and the fills it serves take 18 L: 2 L short.",
      "      before: \`first\` makes 17 L, and the fills it serves take 18 L: 1 L short.",
    ]
  `);
  const mended = await runCli(['diff', 'a.grow.yaml', 'cress.grow.yaml'], { files });
  expect(mended.out).toContain('1 finding disappears');
  expect(mended.out).toContain('    - error batch-too-small at batches › first › volume:');
});

test('a file that was taken away since is named all the same, from where one stands', async () => {
  const { folder, put, commit } = repository({ 'plots/one.grow.yaml': cress.replace('./shelf', '../shelf'), ...bench });
  commit();
  put({ 'plots/one.grow.yaml': null });
  const here = { folder: join(folder, 'plots') };
  const { code, out } = await runCli(['diff', 'HEAD', 'one.grow.yaml'], here);
  expect(code).toBe(0);
  expect(out).toContain('1 recipe is gone.\n');
  expect(out).not.toContain('No value');
  const never = await runCli(['diff', 'HEAD', 'two.grow.yaml'], { folder });
  expect(never).toEqual({ code: 2, out: '', err: 'tidemark: two.grow.yaml: there is no such file\n' });
});
