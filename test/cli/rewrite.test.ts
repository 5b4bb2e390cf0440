// Commands that give files another text: format, migrate, new.

import { readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, runCli } from './run-cli.ts';

const loose = 'recipe:  1\nwaters:\n    brook: {pH: 7.1}   # strip\n';
const neat = 'recipe: 1\n\nwaters:\n  brook: { pH: 7.1 }   # strip\n';

describe('format', () => {
  test('prints one recipe, from a file or from standard input', async () => {
    expect(await runCli(['format', 'a.grow.yaml'], { files: { 'a.grow.yaml': loose } })).toEqual({
      code: 0,
      out: neat,
      err: '',
    });
    expect(await runCli(['format', '-'], { stdin: loose })).toEqual({ code: 0, out: neat, err: '' });
  });

  test('--check names what would change and gives 1; --write writes it; then there is nothing left to do', async () => {
    const folder = folderWith({ 'a.grow.yaml': loose, 'rows/b.grow.yaml': neat });
    expect(await runCli(['format', '--check', '.'], { folder })).toEqual({
      code: 1,
      out: 'a.grow.yaml: would be formatted\n',
      err: '',
    });
    expect(await runCli(['format', '--write', '.'], { folder })).toEqual({
      code: 0,
      out: '',
      err: 'tidemark: a.grow.yaml: formatted\n',
    });
    expect(readFileSync(join(folder, 'a.grow.yaml'), 'utf8')).toBe(neat);
    expect(await runCli(['format', '--check', '.'], { folder })).toEqual({ code: 0, out: '', err: '' });
  });

  test('a broken recipe is left alone, and the others are formatted all the same', async () => {
    const broken = 'recipe: 1\nwaters:\n  "brook: {\n';
    const folder = folderWith({ 'a.grow.yaml': broken, 'b.grow.yaml': loose });
    const { code, err } = await runCli(['format', '--write', '.'], { folder });
    expect(code).toBe(2);
    expect(err).toMatch(/a\.grow\.yaml: line \d is broken, so nothing is moved; `tidemark check` says what is wrong\n/);
    expect(readFileSync(join(folder, 'a.grow.yaml'), 'utf8')).toBe(broken);
    expect(readFileSync(join(folder, 'b.grow.yaml'), 'utf8')).toBe(neat);
  });

  test.each([
    ['several printed', ['format', 'a.grow.yaml', 'b.grow.yaml'], 'one recipe is printed'],
    ['standard input written', ['format', '--write', '-'], 'cannot be written to'],
    ['both at once', ['format', '--write', '--check', 'a.grow.yaml'], 'cannot be used with'],
    ['a missing file', ['format', 'gone.grow.yaml'], 'gone.grow.yaml: there is no such file'],
    ['nothing', ['format'], 'missing required argument'],
  ])('is refused: %s', async (_, args, says) => {
    const { code, out, err } = await runCli(args, { files: { 'a.grow.yaml': loose, 'b.grow.yaml': loose } });
    expect({ code, out, err }).toEqual({ code: 2, out: '', err: expect.stringContaining(says) });
  });

  test('a link is followed, and stays a link', async () => {
    const folder = folderWith({ 'real.grow.yaml': loose });
    symlinkSync('real.grow.yaml', join(folder, 'link.grow.yaml'));
    await runCli(['format', '--write', 'link.grow.yaml'], { folder });
    expect(readFileSync(join(folder, 'real.grow.yaml'), 'utf8')).toBe(neat);
  });
});

describe('migrate', () => {
  test('version 1 is the newest: nothing to do, and that is said', async () => {
    const folder = folderWith({ 'a.grow.yaml': loose, 'b.grow.yaml': neat });
    expect(await runCli(['migrate', 'a.grow.yaml'], { folder })).toEqual({
      code: 0,
      out: loose,
      err: 'tidemark: nothing to migrate: the recipe is of version 1, the newest.\n',
    });
    expect(await runCli(['migrate', '--write', '.'], { folder })).toEqual({
      code: 0,
      out: '',
      err: 'tidemark: nothing to migrate: all 2 recipes are of version 1, the newest.\n',
    });
    expect((await runCli(['migrate', '--check', '.'], { folder })).code).toBe(0);
  });

  test.each([
    ['recipe: 7\n', 'it is of version 7, and this Tidemark knows versions up to 1; a later Tidemark reads it'],
    ['title: a\n', 'it does not say its version; begin it with `recipe: 1`'],
    ['recipe: one\n', 'it does not say its version; begin it with `recipe: 1`'],
  ])('%j is left as it is', async (text, says) => {
    expect(await runCli(['migrate', '-'], { stdin: text })).toEqual({
      code: 2,
      out: '',
      err: `tidemark: -: ${says}\n`,
    });
  });
});

describe('new', () => {
  test.each([
    ['metric', []],
    ['us', ['--us']],
  ])('a recipe that checks clean, is in order, and can be planned: %s', async (show, args) => {
    const { code, out, err } = await runCli(['new', ...args]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(`show: ${show}`);
    expect(out).toContain('start: 2027-03-01');
    expect(await runCli(['check', '--fail-on', 'hint', '-'], { stdin: out })).toEqual({
      code: 0,
      out: '1 recipe checked, nothing found.\n',
      err: '',
    });
    expect((await runCli(['format', '--check', '-'], { stdin: out })).code).toBe(0);
    const plan = await runCli(['plan', '--format', 'json', '-'], { stdin: out });
    expect(JSON.parse(plan.out).batches.first.adjustment).toMatchObject({ with: 'down', to_pH: 5.9 });
  });

  test('its remarks can be taken up: readings where the example stands', async () => {
    const { out } = await runCli(['new']);
    const measured = out.replace(/^ {4}# (?=readings:| {2}- )/gm, '    ');
    expect(measured).not.toBe(out);
    const { code, err } = await runCli(['check', '-'], { stdin: measured });
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  test('with a name, a new file; one that is there is never touched', async () => {
    const folder = folderWith({ 'old.grow.yaml': neat });
    expect(await runCli(['new', 'sill'], { folder })).toEqual({
      code: 0,
      out: '',
      err: 'tidemark: sill.grow.yaml: written; `tidemark plan` shows what it comes to.\n',
    });
    expect(readFileSync(join(folder, 'sill.grow.yaml'), 'utf8')).toBe((await runCli(['new'])).out);
    for (const [name, says] of [
      ['old.grow.yaml', 'it is there already'],
      ['old', 'it is there already'],
      ['no/such/folder', 'its folder is not there'],
    ] as const) {
      const { code, err } = await runCli(['new', name], { folder });
      expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining(says) });
    }
    expect(readFileSync(join(folder, 'old.grow.yaml'), 'utf8')).toBe(neat);
  });
});
