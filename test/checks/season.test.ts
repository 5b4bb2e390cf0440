// What the forecast and the log give rise to: nothing twice, and the rest computed whatever is wrong with one entry.

import { describe, expect, test } from 'vitest';
import { numberOf } from '../../server/plan/figure.ts';
import { isForecast, seasonOf } from '../../server/plan/season.ts';
import { checkFindings } from '../check-findings.ts';
import { recipe } from '../recipe.ts';

describe('air roots', () => {
  test('while no root hangs, a container may be topped up to its rim', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
      containers:
        crock:
          inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
          net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
      stages: { leaf: { lasts: 30 d, batch: opening, uses: 20 mL/d } }
      plantings:
        cress: { container: crock, transplant: 2027-02-20, fill: 10 mm into net cup, stages: [leaf] }
      batches: { opening: { water: rain, volume: 4 L } }
      log:
        - { on: 2027-02-24, planting: cress, top-up: { batch: opening, volume: 150 mL } }
        # The cup stands 1 cm deep, and 4 × 20 mL do not bare it; on 15 March the level is well below.
        - { on: 2027-03-15, planting: cress, top-up: { batch: opening, volume: 300 mL } }
        #                                                                      ^^^^^^ air-roots-drowned: its air gap of 2.54 cm, as young plants have, leaves no room.
    `);
  });

  test('several top-ups are each held against what stands on their day', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
      containers:
        tray:
          inside: { box: { length: 40 cm, width: 25 cm, height: 20 cm } }
          net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
      stages: { leaf: { lasts: 30 d, batch: opening, uses: 500 mL/d } }
      plantings:
        mint: { container: tray, transplant: 2027-03-01, keep-air-gap: 5 cm, stages: [leaf] }
      batches: { opening: { water: rain, volume: 40 L } }
      log:
        # 15 L less 12 × 0.5: 9 L, and 10 L may stand.
        - { on: 2027-03-13, planting: mint, top-up: { batch: opening, volume: 1 L } }
        - { on: 2027-03-13, planting: mint, top-up: { batch: opening, volume: 1 L } }
        #                                                                     ^^^ air-roots-drowned: leaves no room
        - { on: 2027-03-23, planting: mint, top-up: { water: rain, volume: 5 L } }
        #                                                                  ^^^ air-roots-drowned: leaves room for 4 L
    `);
  });
});

describe('one cause, one finding', () => {
  test('a rate that empties the container at once is not told a second time by its day', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3 } }
      containers: { crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } } }
      stages:
        leaf: { lasts: 30 d, batch: opening, uses: 3 L/d }
        #                                          ^^^^^ use-empties-at-once: use 3 L a day, and one fill is 1.85 L
      plantings: { vine: { crop: tomato, container: crock, fill: 12 cm, transplant: 2027-02-20, stages: [leaf] } }
      batches: { opening: { water: rain, volume: 4 L } }
    `);
  });

  test('a tomato in a small vessel is told so once: by its day, or where the use is written too low, by what is published', () => {
    checkFindings(recipe`
      recipe: 1
      start: 2027-02-20
      waters: { rain: { alkalinity: 0 mg/L CaCO3 } }
      containers: { pail: { inside: { cylinder: { diameter: 28 cm, height: 33 cm } } } }
      stages:
        thirsty: { lasts: 90 d, batch: opening, uses: 900 mL/d }
        sparing: { lasts: 90 d, batch: opening, uses: 100 mL/d }
        silent: { lasts: 90 d, batch: opening }
      plantings:
        a: { crop: cherry tomato, container: pail, fill: 30 cm, stages: [thirsty] }
        #                                    ^^^^ runs-dry: \`a\` stands too low on 2027-03-12, 70 days before its last stage ends.
        b: { crop: cherry tomato, container: pail, fill: 30 cm, stages: [sparing] }
        #                                    ^^^^ fill-too-small-for-crop: gets 18.5 L, and its tomato drinks 33.8 L to 86.67 L
        c: { crop: cherry tomato, container: pail, fill: 30 cm, stages: [silent] }
        #                                    ^^^^ runs-dry: \`c\` stands too low on
        d: { crop: cherry tomato, container: pail, fill: 30 cm }
        #                                    ^^^^ fill-too-small-for-crop: drinks 41.7 L to 107 L
        e: { crop: chives, container: pail, fill: 30 cm, stages: [sparing] }
      batches: { opening: { water: rain, volume: 100 L } }
    `);
  });

  test('where the air gap leaves no room, no top-up is promised', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3 } }
      containers:
        dish:
          inside: { box: { length: 40 cm, width: 25 cm, height: 9 cm } }
          net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
      stages: { leaf: { lasts: 30 d, batch: opening, uses: 100 mL/d } }
      plantings:
        mint: { container: dish, keep-air-gap: 3 cm, transplant: 2027-03-01, stages: [leaf] }
        #                  ^^^^ runs-dry: stands too low on 2027-03-29, 2 days before its last stage ends. Its air gap leaves no room
      batches: { opening: { water: rain, volume: 5 L } }
    `);
  });

  test('only the last reading out of its band is told, and not one that came back', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
      containers:
        tray:
          inside: { box: { length: 40 cm, width: 25 cm, height: 20 cm } }
          net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
      targets: { leafy: { pH: 5.5..6.5, EC: 1.0..1.6 mS/cm } }
      stages: { leaf: { lasts: 30 d, target: leafy, batch: opening, uses: 100 mL/d } }
      plantings:
        mint: { container: tray, transplant: 2027-03-01, stages: [leaf] }
        sage: { container: tray, transplant: 2027-03-01, stages: [leaf] }
      batches: { opening: { water: rain, volume: 40 L, readings: [{ pH: 5.9, EC: 1.3 mS/cm }] } }
      log:
        - { on: 2027-03-05, planting: mint, pH: 7.4, EC: 2.2 mS/cm }
        - { on: 2027-03-08, planting: mint, pH: 6.2, EC: 1.2 mS/cm }
        - { on: 2027-03-08, planting: sage, pH: 6.9, EC: 0.8 mS/cm }
        #                                       ^^^ log-ph-out-of-band: last measured at pH 6.9, above its band of 5.5 to 6.5.
        #                                                ^^^^^^^^^ log-ec-out-of-band: No top-up that its air gap allows brings it back: change the solution for fresh \`opening\`.
    `);
  });

  test('the step back is half of what the titration of the container asks for, in what the tools measure', () => {
    // 15 L hold 20 mg/L CaCO3, 0.4 mmol/L: from 7.4 to 6.0 takes about two thirds of that, 4 mmol, of 5 % phosphoric acid, 0.52 mmol/mL.
    checkFindings(
      recipe`
        recipe: 1
        waters: { brook: { pH: 7.4, alkalinity: 20 mg/L CaCO3, ions: { Ca: 8 mg/L } } }
        adjusters: { down: { acid: { phosphoric: 5 % }, density: 1.02 kg/L } }
        tools: { syringe: { smallest: 0.5 mL, largest: 10 mL } }
        containers:
          tray:
            inside: { box: { length: 40 cm, width: 25 cm, height: 20 cm } }
            net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
        targets: { leafy: { pH: 5.5..6.5 } }
        stages: { leaf: { lasts: 30 d, target: leafy, batch: opening, uses: 100 mL/d } }
        plantings:
          mint: { container: tray, transplant: 2027-03-01, stages: [leaf] }
        batches: { opening: { water: brook, volume: 40 L, adjust: { with: down } } }
        log:
          - { on: 2027-03-01, planting: mint, pH: 7.4 }
          #                                       ^^^ log-ph-out-of-band: Begin with 3.5 mL of \`down\` in each container, stir, and measure again: an estimate.
      `,
      ['acid-hazard', 'ph-drifts'],
    );
  });

  test('a reading of a batch is held against what the batch aims at', () => {
    checkFindings(recipe`
      recipe: 1
      waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
      targets: { leafy: { pH: 5.5..6.5 } }
      batches: { opening: { water: rain, volume: 40 L, target: leafy, readings: [{ pH: 5.9 }] } }
      log:
        - { on: 2027-03-05, batch: opening, pH: 6.7 }
        #                                       ^^^ log-ph-out-of-band: \`opening\` was last measured at pH 6.7
    `);
  });
});

describe('bad input leaves the rest computed', () => {
  const bad = recipe`
    recipe: 1
    waters: { rain: { alkalinity: 0 mg/L CaCO3, EC: 0.05 mS/cm } }
    containers:
      tray: { inside: { box: { length: 40 cm, width: 25 cm, height: 20 cm } }, net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm } }
      thimble: { inside: { cylinder: { diameter: 3 cm, height: 4 cm } }, net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm } }
    stages:
      leaf: { lasts: 30 d, batch: opening, uses: 100 mL/d }
      endless: { batch: opening, uses: 100 mL/d }
      slip: { lasts: 30 d, batch: opening, uses: 100 mL }
    plantings:
      sound: { container: tray, transplant: 2027-03-01, stages: [leaf] }
      nowhere: { transplant: 2027-03-01, stages: [leaf] }
      cramped: { container: thimble, transplant: 2027-03-01, stages: [leaf] }
      forever: { container: tray, transplant: 2027-03-01, stages: [endless] }
      slipped: { container: tray, crop: lettuce, transplant: 2027-03-01, stages: [slip] }
      backward: { container: tray, sow: 2027-03-05, transplant: 2027-03-01, stages: [leaf] }
      timeless: { container: tray, stages: [leaf] }
    batches: { opening: { water: rain, volume: 100 L } }
    log:
      - { on: 2027-02-01, planting: sound, level: 9 cm }
      - { on: 2027-03-04, planting: nobody, level: 9 cm }
      - { on: 2027-03-05, planting: sound, level: 31 cm }
      - { on: 2027-06-05, planting: sound, level: 3 cm }
  `;
  const { plan, findings } = bad.snapshot();
  const season = seasonOf(plan);

  test('each is found once', () => {
    const codes = findings.map(({ finding }) => finding.code).sort();
    expect(codes).toEqual([
      'dates-reversed',
      'level-above-rim',
      'log-after-end',
      'log-before-start',
      'name-unknown',
      'net-cup-too-deep',
      'unit-mismatch',
      'value-missing',
      'value-missing',
    ]);
  });

  test.each([
    ['sound', true],
    ['nowhere', false],
    ['cramped', false],
    ['forever', false],
    ['slipped', false],
    ['backward', true],
    ['timeless', false],
  ])('the forecast of %s: %s', (name, known) => {
    const forecast = season.plantings.get(name)?.forecast;
    expect(forecast !== undefined && isForecast(forecast)).toBe(known);
    if (forecast !== undefined && !isForecast(forecast)) expect(forecast.wants.length).toBeGreaterThan(0);
  });

  test('the fills and the batch are there', () => {
    expect(numberOf(plan.plantings.get('sound')?.fill.volume)).toBeCloseTo(15, 9);
    expect(season.tasks.filter(({ about }) => about === 'sound').length).toBeGreaterThan(5);
  });
});
