import { describe, expect, test } from 'vitest';
import { planJson, waterJson } from '../../schema/plan-json.ts';

const empty = {
  formatVersion: 1,
  file: 'a.grow.yaml',
  title: null,
  batches: {},
  containers: {},
  plantings: {},
  tasks: [],
  supplies: {},
  findings: [],
  unknown: [],
};
const solution = {
  pH: null,
  pH_in_air: null,
  EC_mS_per_cm: null,
  ionicStrength_mol_per_L: null,
  saturation: { gypsum: null, brushite: null, struvite: null, calcite: null, hydroxyapatite: null },
};
const batch = {
  volume_L: 20,
  loads: [{ volume_L: 10, doses: { green: { mL: 20 } } }],
  doses: { green: { exact_mL: 40, measured_mL: 40, with: [{ tool: 'syringe', times: 2, mL: 10 }], error_percent: 0 } },
  elements_mg_per_L: { N: 115 },
  nitrogen_mg_per_L: { nitrate: 97, ammonium: 18, urea: 0 },
  predicted: solution,
  estimated: true,
  measured: null,
  adjustment: null,
  readings: [{ added: { down: { mL: 4 } }, measured_pH: 6.6, predicted_pH: null }],
  final: solution,
};

describe('the plan for programs', () => {
  test('an empty plan and a batch are accepted', () => {
    expect(planJson.safeParse(empty).success).toBe(true);
    expect(planJson.safeParse({ ...empty, batches: { first: batch } }).success).toBe(true);
  });

  test('a reader that knows fewer keys is not disturbed by more', () => {
    expect(planJson.safeParse({ ...empty, later: true, batches: { first: { ...batch, later: 1 } } }).success).toBe(
      true,
    );
  });

  const adjustment = {
    with: 'down',
    from_pH: 7,
    to_pH: 5.8,
    exact_mL: 4,
    firstStep_mL: 2,
    method: 'composition',
    low_mL: 3,
    high_mL: 5,
    firstStep_pH: 6.4,
    perLoad: null,
    steps: [{ mL: 2, pH: 6.4 }],
    learned: null,
    curve: [],
  };

  test.each([
    ['another version', { ...empty, formatVersion: 2 }],
    ['a key that is missing', { ...empty, tasks: undefined }],
    ['a number as text', { ...empty, batches: { first: { ...batch, volume_L: '20' } } }],
    [
      'an amount in two units',
      { ...empty, batches: { first: { ...batch, loads: [{ volume_L: 20, doses: { green: { mL: 1, g: 1 } } }] } } },
    ],
    [
      'an amount in none',
      { ...empty, batches: { first: { ...batch, loads: [{ volume_L: 20, doses: { green: {} } }] } } },
    ],
    [
      'an acid amount without cautions',
      { ...empty, batches: { first: { ...batch, adjustment: { ...adjustment, cautions: [] } } } },
    ],
    [
      'a finding of no code',
      {
        ...empty,
        findings: [
          {
            code: 'no-such-code',
            severity: 'error',
            message: '',
            file: '',
            help: '',
            range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
          },
        ],
      },
    ],
    ['a gap that says nothing', { ...empty, unknown: [{ key: ['batches', 'first'], wants: [] }] }],
  ])('%s is refused', (_, printed) => {
    expect(planJson.safeParse(printed).success).toBe(false);
  });

  test('an adjustment with its cautions is accepted', () => {
    const withCautions = { ...adjustment, cautions: ['Wear gloves and eye protection.'] };
    expect(planJson.safeParse({ ...empty, batches: { first: { ...batch, adjustment: withCautions } } }).success).toBe(
      true,
    );
  });
});

test('a water for programs has all its keys', () => {
  const printed = { formatVersion: 1, file: 'a.grow.yaml', waters: { tap: { pH: 7.4 } } };
  expect(waterJson.safeParse(printed).success).toBe(false);
});
