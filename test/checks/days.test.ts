import { test } from 'vitest';
import { checkFindings } from '../check-findings.ts';
import { recipe } from '../recipe.ts';

test('each log entry is held against the latest before it', () => {
  checkFindings(recipe`
    recipe: 1
    log:
      - { on: 2027-03-01, note: a }
      - { on: 2027-03-01, note: b }
      - { on: 2027-02-01, note: c }
      #       ^^^^^^^^^^ reading-out-of-order: 2027-02-01 stands behind one of 2027-03-01
      - { on: 2027-02-03, note: d }
      #       ^^^^^^^^^^ reading-out-of-order: 2027-02-03 stands behind one of 2027-03-01
      - { on: 2027-03-02, note: e }
  `);
});

test('a note on seedlings may be older than the planting, a measurement may not', () => {
  checkFindings(recipe`
    recipe: 1
    start: 2027-02-20
    containers: { crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } } }
    plantings:
      berry: { container: crock, fill: 12 cm }
      melon: { container: crock, fill: 12 cm, transplant: 2027-02-10 }
    log:
      - { on: 2027-02-01, planting: berry, note: thinned to one }
      - { on: 2027-02-12, planting: berry, level: 11 cm }
      #       ^^^^^^^^^^ log-before-start: \`berry\` is set over its solution on 2027-02-20
      - { on: 2027-02-12, planting: melon, level: 11 cm }
      - { on: 2027-02-20, planting: berry, level: 12 cm }
  `);
});

test('a later stage without a batch goes on with what is there, a first one has nothing', () => {
  checkFindings(recipe`
    recipe: 1
    waters: { mains: { pH: 7.8 } }
    containers: { crock: { inside: { cylinder: { diameter: 14 cm, height: 20 cm } } } }
    stages:
      rooting: { lasts: 18 d, batch: opening }
      resting: { lasts: 9 d }
    plantings:
      berry: { container: crock, fill: 12 cm, stages: [rooting, resting] }
      melon: { container: crock, fill: 12 cm, stages: [resting, rooting] }
      #                                                ^^^^^^^ stage-unfed: \`melon\` begins with \`resting\`
    batches: { opening: { water: mains, volume: 20 L } }
  `);
});

test('an aim stands in its band, in a target and in a batch', () => {
  checkFindings(
    recipe`
    recipe: 1
    waters: { mains: { pH: 7.8, alkalinity: 140 mg/L CaCO3 } }
    adjusters: { down: { acid: { citric: 5 % } } }
    targets: { leafy: { pH: 5.5..6.5, pH-aim: 6.5 } }
    batches:
      a: { water: mains, volume: 20 L, target: leafy, adjust: { with: down, to: 5.5 } }
      b: { water: mains, volume: 20 L, target: leafy, adjust: { with: down, to: 5.4 } }
      #                                                                         ^^^ aim-out-of-band: pH 5.4 lies outside the band of \`leafy\`, 5.5..6.5
  `,
    ['ph-out-of-band'],
  );
});
