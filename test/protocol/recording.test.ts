import { expect, test } from 'vitest';
import {
  type Recordable,
  type RecordParams,
  type RecordResult,
  recordableRequest,
  recordRequest,
} from '../../server/protocol/requests.ts';
import { startInProcess } from './in-process.ts';

const uri = 'file:///shelf/first.grow.yaml';
const text = `recipe: 1
waters: { spring: { pH: 7.8 } }
adjusters: { down: { acid: { phosphoric: 10 % }, density: 1.05 kg/L } }
plantings: { berry: { crop: strawberry, container: crock, count: 3, transplant: 2027-02-20 } }
batches: { first: { water: spring, volume: 20 L } }
log: [{ on: 2027-03-01, planting: berry, note: "🌱" }]
`;
const reading: RecordParams['recording'] = { kind: 'planting', planting: 'berry', on: '2027-03-04', pH: '6.2' };

test('what can be recorded has a few words by which to choose', async () => {
  const { open, connection } = await startInProcess();
  await open(uri, text);
  expect(await connection.sendRequest<Recordable>(recordableRequest, { uri })).toEqual({
    plantings: [{ name: 'berry', detail: 'strawberry, 3 × crock' }],
    batches: [{ name: 'first', detail: '20 L of spring' }],
    waters: [{ name: 'spring', detail: 'pH 7.8' }],
    adders: [{ name: 'down', detail: 'adjuster' }],
  });
});

test.each([
  ['utf-16', 53],
  ['utf-8', 55],
] as const)('the edit counts in the client’s units, for the version that it has: %s', async (encoding, character) => {
  const { open, connection } = await startInProcess({ capabilities: { general: { positionEncodings: [encoding] } } });
  await open(uri, text);
  const at = { line: 5, character };
  expect(await connection.sendRequest<RecordResult>(recordRequest, { uri, recording: reading })).toEqual({
    kind: 'edit',
    version: 1,
    edit: { range: { start: at, end: at }, newText: ', { on: 2027-03-04, planting: berry, pH: 6.2 }' },
    findings: [],
  });
});

test('what is wrong with a value is said of its part', async () => {
  const { open, connection } = await startInProcess();
  await open(uri, text);
  const recording = { ...reading, EC: '3 cm' };
  expect(await connection.sendRequest<RecordResult>(recordRequest, { uri, recording })).toMatchObject({
    kind: 'refused',
    complaints: [{ about: 'EC' }],
  });
});

test('a file that is not open is answered, not failed', async () => {
  const { connection } = await startInProcess();
  expect(await connection.sendRequest(recordableRequest, { uri })).toBeNull();
  expect(await connection.sendRequest(recordRequest, { uri, recording: reading })).toMatchObject({ kind: 'refused' });
});
