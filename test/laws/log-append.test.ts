import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { parseDocument } from 'yaml';
import type { Recording } from '../../schema/recording.ts';
import { record } from '../../server/answers/record/record.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';

// Laws run hundreds of texts each: on a busy machine that takes longer than one example may.
vi.setConfig({ testTimeout: 60_000 });

// The values come from the `yaml` package reading the whole file, so that neither our cut nor our tree is trusted here.

/** The log as people write it, from none at all to flow style, with comments where they hurt. */
const logs = [
  '',
  'log:\n',
  'log: # nothing yet\n',
  'log: []\n',
  'log: [ ]  # none\n',
  'log: ~\n',
  'log:\n  - { on: 2027-03-01, planting: berry, pH: 6.2 }\n',
  'log:\n- { on: 2027-03-01, planting: berry, pH: 6.2 }   # at the key’s own indent\n\n',
  'log:\n      - on: 2027-03-01\n        planting: berry\n        note: "two\n          lines"\n\n  # the end\n',
  'log:\n  - on: 2027-03-01\n    planting: berry\n    note: |\n      kept\n\n      as it is\n',
  'log:\n  - on: 2027-03-01\n    planting: berry\n    note: |+\n      kept\n\n\n',
  'log: [{ on: 2027-03-01, planting: berry, pH: 6.2 }]\n',
  'log:\n  [\n    { on: 2027-03-01, planting: berry, pH: 6.2 }, # first\n    { on: 2027-03-02, planting: berry, EC: 1.3 mS/cm },\n  ]\n',
  '"log":\n  # before\n  - { on: 2027-03-01, planting: berry, top-up: { batch: opening, volume: 1 cup } }\n  # after\n',
]; // biome-ignore format: a table

const readings = [
  '',
  '    readings:\n',
  '    readings: []\n',
  '    readings: [{ pH: 7.2 }]  # first\n',
  '    readings:\n    - { pH: 7.2 }\n',
  '    readings: # as measured\n      - pH: 7.2\n        EC: 1.3 mS/cm\n\n',
]; // biome-ignore format: a table

const middles = ['', '\n', '# a note\n', '\n\n  # a note, indented\n', 'x-own: { a: [1, 2] }\n'];

const odd = fc
  .record({
    log: fc.constantFrom(...logs),
    reading: fc.constantFrom(...readings),
    middle: fc.constantFrom(...middles),
    logFirst: fc.boolean(),
    lineBreak: fc.constantFrom('\n', '\n', '\r\n'),
    mark: fc.constantFrom('', '', '\uFEFF'),
    ended: fc.boolean(),
  })
  .map(({ log, reading, middle, logFirst, lineBreak, mark, ended }) => {
    const head = `recipe: 1 # first line\nwaters: { brook: { pH: 7 } }\nadjusters:\n  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }\nplantings:\n  berry: { container: crock }\n`;
    const batches = `batches:\n  opening:\n    water: brook\n    volume: 20 L\n${reading}`;
    const parts = logFirst ? [head, log, middle, batches] : [head, batches, middle, log];
    const text = parts.join('');
    // What ends with blank lines that a block text keeps says something else without them.
    const body = ended || text.includes('|') ? text : text.replace(/\n+$/, '');
    return mark + body.replaceAll('\n', lineBreak);
  });

const notes = fc.oneof(
  fc.constantFrom('thinned', 'it is: fine', '# no comment', '- a list', '{ a }', '12', 'true', "it's", '"', 'a, b', '*', '&x', '!', '@', 'é 🌱'),
  fc.string({ minLength: 1, maxLength: 20 }),
); // biome-ignore format: a table

const recordings: fc.Arbitrary<Recording> = fc.oneof(
  fc.record({
    kind: fc.constant('planting' as const),
    planting: fc.constant('berry'),
    on: fc.constantFrom('2027-02-20', '2027-03-05', '2027-04-01'),
    pH: fc.constantFrom(undefined, '6.2', '6'),
    level: fc.constantFrom(undefined, '11.5 cm', '4 in'),
    note: notes.filter(note => note.trim() !== ''),
  }),
  fc.record({
    kind: fc.constant('planting' as const),
    planting: fc.constant('berry'),
    on: fc.constant('2027-03-05'),
    topUp: fc.constantFrom({ volume: '400 mL', batch: 'opening' }, { volume: '1 cup', water: 'brook' }),
  }),
  fc.record({
    kind: fc.constant('batch' as const),
    batch: fc.constant('opening'),
    pH: fc.constantFrom('6.6', '7'),
    EC: fc.constantFrom(undefined, '1.3 mS/cm'),
    add: fc.constantFrom([], [{ name: 'down', amount: '4 mL' }]),
  }),
);

function snapshotOf(text: string): Snapshot {
  const workspace = new Workspace();
  workspace.open('file:///a.grow.yaml', text);
  const snapshot = workspace.snapshot('file:///a.grow.yaml');
  if (snapshot === undefined) throw new Error('no snapshot');
  return snapshot;
}

type Values = { log?: unknown[] | null; batches: { opening: { readings?: unknown[] | null } } };

function valuesOf(text: string): Values {
  const document = parseDocument(text, { logLevel: 'silent' });
  expect(document.errors, JSON.stringify(text)).toEqual([]);
  return document.toJS();
}

function wanted(recording: Recording): unknown {
  const known = (pairs: object) => Object.fromEntries(Object.entries(pairs).filter(([, value]) => value !== undefined));
  const pH = recording.pH === undefined ? undefined : Number(recording.pH);
  if (recording.kind === 'batch') {
    const { add = [], EC } = recording;
    const added = Object.fromEntries(add.map(({ name, amount }) => [name, amount]));
    return known({ add: add.length === 0 ? undefined : added, pH, EC });
  }
  const { on, planting, EC, level, topUp, note } = recording;
  return known({ on, planting, pH, EC, level, 'top-up': topUp && known(topUp), note: note?.trim() });
}

/** A log in which each day stands before later ones, with one more entry so; the samples above are all in order. */
function withEntry(log: readonly unknown[], entry: unknown): unknown[] {
  const day = (of: unknown) => String((of as { readonly on: string }).on);
  const place = log.findIndex(other => day(other) > day(entry));
  return log.toSpliced(place === -1 ? log.length : place, 0, entry);
}

test('an entry is added at its place in its list, every other byte stays, and nothing else is said', () => {
  let made = 0;
  fc.assert(
    fc.property(odd, recordings, (text, recording) => {
      const recorded = record(snapshotOf(text), recording);
      const why = JSON.stringify({ text, recording, recorded });
      // A note may hold what no YAML file can; then it is refused, never written wrongly.
      if (
        recorded.kind === 'refused' &&
        recording.kind === 'planting' &&
        /\p{C}|\p{Z}|\uFFFD/u.test(recording.note ?? '')
      ) {
        return;
      }
      if (recorded.kind !== 'recorded') throw new Error(why);
      made++;
      const { change, text: after } = recorded;
      const before = valuesOf(text);
      const expected = structuredClone(before);
      if (recording.kind === 'planting') expected.log = withEntry(before.log ?? [], wanted(recording));
      else expected.batches.opening.readings = [...(before.batches.opening.readings ?? []), wanted(recording)];
      expect(valuesOf(after), why).toEqual(expected);
      // Only an explicit null gives way; all else is an insertion.
      if (!/: ~/.test(text)) expect(change.to, why).toBe(change.from);
      expect(after.startsWith(text.slice(0, change.from)) && after.endsWith(text.slice(change.to)), why).toBe(true);
      if (text.includes('\r\n')) expect(change.text, why).not.toMatch(/(?<!\r)\n/);
      expect(after.endsWith('\n'), why).toBe(text.endsWith('\n'));
    }),
    { numRuns: 300 },
  );
  expect(made).toBeGreaterThan(250);
});

test('readings stand in the order in which they were recorded, log entries in that of their days', () => {
  fc.assert(
    fc.property(odd, fc.array(recordings, { minLength: 2, maxLength: 4 }), (text, all) => {
      let now = text;
      const done: Recording[] = [];
      for (const recording of all) {
        const recorded = record(snapshotOf(now), recording);
        if (recorded.kind === 'refused') continue;
        now = recorded.text;
        done.push(recording);
      }
      const before = valuesOf(text);
      const logged = done.filter(({ kind }) => kind === 'planting').map(wanted);
      const read = done.filter(({ kind }) => kind === 'batch').map(wanted);
      expect(valuesOf(now).log ?? []).toEqual(logged.reduce(withEntry, before.log ?? []));
      expect(valuesOf(now).batches.opening.readings ?? []).toEqual([
        ...(before.batches.opening.readings ?? []),
        ...read,
      ]);
    }),
    { numRuns: 60 },
  );
});
