import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { runCli } from './run-cli.ts';

const recipe = `recipe: 1
title: Stairwell
stages: { leaf: { lasts: 20 d, batch: opening } }
plantings: { berry: { transplant: 2027-02-20, stages: [leaf] } }
`;

test('the calendar is stamped with today and named by the file, wherever it lies', async () => {
  const { code, out, err } = await runCli(['calendar', 'plots/bench.grow.yaml', '--fail-on', 'never'], {
    files: { 'plots/bench.grow.yaml': recipe },
  });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const events = new ICAL.Component(ICAL.parse(out)).getAllSubcomponents('vevent').map(event => new ICAL.Event(event));
  expect(events.map(({ uid }) => uid)).toContain('bench.grow.yaml/berry/harvest/1@tidemark');
  expect(out).toContain('DTSTAMP:20270301T000000Z\r\n');
});

test('a file that is not there gives 2', async () => {
  const { code, out, err } = await runCli(['calendar', 'none.grow.yaml']);
  expect({ code, out, err }).toEqual({ code: 2, out: '', err: 'tidemark: none.grow.yaml: there is no such file\n' });
});
