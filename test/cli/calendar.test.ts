import { join } from 'node:path';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { folderWith, runCli } from './run-cli.ts';

const recipe = `recipe: 1
title: Stairwell
stages: { leaf: { lasts: 20 d, batch: opening } }
plantings: { berry: { transplant: 2027-02-20, stages: [leaf] } }
`;

/** The identities of what `calendar FILE` prints, called in a folder. */
async function uidsOf(file: string, folder: string): Promise<readonly string[]> {
  const { out } = await runCli(['calendar', file, '--fail-on', 'never'], { folder });
  const events = new ICAL.Component(ICAL.parse(out)).getAllSubcomponents('vevent');
  return events.map(event => new ICAL.Event(event).uid);
}

test('the calendar is stamped with today', async () => {
  const { code, out, err } = await runCli(['calendar', 'plots/bench.grow.yaml', '--fail-on', 'never'], {
    files: { 'plots/bench.grow.yaml': recipe },
  });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('DTSTAMP:20270301T000000Z\r\n');
});

test('events are known by where the recipe lies in its repository, wherever it is called from', async () => {
  const folder = folderWith({ 'plots/bench.grow.yaml': recipe, 'roof/bench.grow.yaml': recipe });
  const plots = await uidsOf('plots/bench.grow.yaml', folder);
  expect(plots).toEqual(await uidsOf('bench.grow.yaml', join(folder, 'plots')));
  expect(plots.find(uid => uid.endsWith('/berry/harvest/1@tidemark'))).toBeDefined();
  expect(plots.join()).not.toContain('plots');
  const roof = await uidsOf('roof/bench.grow.yaml', folder);
  expect(roof.filter(uid => plots.includes(uid))).toEqual([]);
});

test('a file that is not there gives 2', async () => {
  const { code, out, err } = await runCli(['calendar', 'none.grow.yaml']);
  expect({ code, out, err }).toEqual({ code: 2, out: '', err: 'tidemark: none.grow.yaml: there is no such file\n' });
});
