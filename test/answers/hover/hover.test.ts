import { expect, test } from 'vitest';
import { hints } from '../../../server/answers/hints.ts';
import { hover } from '../../../server/answers/hover/hover.ts';
import { checkHover } from '../../check-hover.ts';
import { recipe } from '../../recipe.ts';

test('a key says what the format says of it', () => {
  checkHover(recipe`
    recipe: 1
    plantings:
      mint:
        keep-air$0-gap: 5 cm
  `).toMatchInlineSnapshot(`
    "    keep-air-gap: 5 cm
        ▔▔▔▔▔▔▔▔↑▔▔▔
    Not known yet; missing: the container (plantings › mint › container).

    keep-air-gap

    Once roots hang, no top-up may leave less air than this between the net cup and the level.

    keep-air-gap: 5 cm"
  `);
});

test('a quantity is shown in other units', () => {
  checkHover(recipe`
    recipe: 1
    waters:
      well: { alkalinity: 140 mg$0/L CaCO3 }
  `).toMatchInlineSnapshot(`
    "  well: { alkalinity: 140 mg/L CaCO3 }
                          ▔▔▔▔▔▔↑▔▔▔▔▔▔▔
    140 mg/L CaCO3 = 2.8 meq/L · 7.84 dKH · 171 mg/L HCO3

    alkalinity

    What the water holds against acid. It decides how much acid a pH step takes, far more than the pH does.

    alkalinity: 140 mg/L CaCO3, alkalinity: 2.8 meq/L, alkalinity: 7.8 dKH, alkalinity: 171 mg/L HCO3"
  `);
});

test('a fill: level, one container and all, how it is reckoned', () => {
  checkHover(recipe`
    recipe: 1
    containers: { tub: { inside: { box: { length: 40 cm, width: 30 cm, height: 20 cm } } } }
    plantings:
      cress: { container: tub, count: 2, fill: 5$0 cm }
  `).toMatchInlineSnapshot(`
    "  cress: { container: tub, count: 2, fill: 5 cm }
                                               ▔↑▔▔
    Fill of cress

    Each container: 6 L, to a level of 5 cm
    2 containers together: 12 L

    volume = 6 L − 0 mL = 6 L

    - level: 5 cm, plantings › cress › fill
    - inside up to the level: 6 L
    - displaced by the net cup: 0 mL

    Volumes of cylinder, box, frustum and prismatoid (elementary geometry)"
  `);
});

test('a finding says why it matters and how to mend it', () => {
  checkHover(recipe`
    recipe: 1
    waters:
      well: { temperature: 18 m$0L }
  `).toMatchInlineSnapshot(`
    "  well: { temperature: 18 mL }
                           ▔▔▔▔↑
    temperature

    The temperature at which the water is used.

    temperature: 18 °C

    ────

    The unit measures something else unit-mismatch

    A value of the wrong kind would be added to what it cannot be added to.

    How to mend it: Write a unit of the kind that the key takes.

    NIST Special Publication 811, Guide for the Use of the International System of Units, Appendix B"
  `);
});

test('inside an adjuster, an adjustment and an addition the cautions are never far', () => {
  const places = [
    recipe`
      recipe: 1
      adjusters: { up: { base: { KOH: 10$0 % } } }
    `,
    recipe`
      recipe: 1
      adjusters: { up: { base: { KOH: 10 % } } }
      batches: { first: { adjust: { with: up, t$0o: 6 } } }
    `,
    recipe`
      recipe: 1
      adjusters: { up: { base: { KOH: 10 % } } }
      batches: { first: { readings: [{ add: { up: 4$0 mL } }] } }
    `,
    recipe`
      recipe: 1
      batches: { first: { readings: [{ add: { nothing: 4$0 mL } }] } }
    `,
  ];
  for (const place of places) {
    const said = hover(place.snapshot(), place.cursor?.offset ?? 0)?.markdown;
    expect(said).toContain('⚠ **Burns skin and eyes.**');
    expect(said).toContain('Wear gloves and eye protection.');
  }
});

test('a feed that is added is no acid', () => {
  const { snapshot, cursor } = recipe`
    recipe: 1
    feeds: { moss: {} }
    batches: { first: { readings: [{ add: { moss: 4$0 mL } }] } }
  `;
  expect(hover(snapshot(), cursor?.offset ?? 0)?.markdown).not.toContain('⚠');
});

test('a comment, a blank line and a file that is not YAML say nothing', () => {
  for (const nothing of [recipe`recipe: 1 # no$0te`, recipe`recipe: 1\n$0\n\ntitle: a`, recipe`${'\0'}$0`]) {
    expect(hover(nothing.snapshot(), nothing.cursor?.offset ?? 0)?.markdown ?? '').not.toContain('needed');
  }
});

test('every offset of a recipe has a hover or none, and none throws', () => {
  const { files, snapshot } = recipe`
    recipe: 1
    use: [./none.grow.yaml]
    feeds: { moss: { label: 2 mL/L, analysis: { N: 5 % } }, '': {} }
    containers: { jug: { inside: { cone: { top: 10 cm } }, net-cup: { depth: 5 cm } } }
    plantings: { mint: { container: jug, fill: to net cup, stages: [a, b, c] }, x: }
    batches:
      first: { volume: as needed, feed: { moss: label, gone: 2 g, __proto__: label }, adjust: { with: x } }
      second: [1, 2
    log: [{ on: 2027-03-01 }, 3]
  `;
  const taken = snapshot();
  for (let offset = 0; offset <= files[0].text.length; offset++) {
    const found = hover(taken, offset);
    if (found === undefined) continue;
    expect(found.markdown).not.toMatch(/undefined|NaN|\[object/u);
    expect(found.range.from <= offset && offset <= found.range.to).toBe(true);
  }
});

test('nor does one of a recipe full of what cannot be', () => {
  for (const show of ['metric', 'us']) {
    const { files, snapshot } = recipe`
      recipe: 1
      show: ${show}
      start: 2027-02-01
      waters:
        acid: { pH: 3.9, alkalinity: 40 mg/L CaCO3 }
        hot: { pH: 7, alkalinity: 40 mg/L CaCO3, temperature: 90 °C }
        brook: { pH: 7.6, alkalinity: 110 mg/L CaCO3, ions: { Ca: 40 mg/L, N: 3 } }
      feeds: { salt: { formula: KNO3 }, odd: { formula: K(NO3 }, moss: { label: 2 mL/L, analysis: { N: 5 % } } }
      adjusters:
        down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
        dry: { acid: { phosphoric: 120 % } }
        none: {}
        thumb: { response: -0.6 pH at 0.3 mL/L }
      tools: { can: { holds: 8 L } }
      containers: { tub: { inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } }, net-cup: { depth: 5 cm } } }
      targets: { low: { pH: 5.5..6.5, EC: 1..1.6 mS/cm, N: 120..160 mg/L } }
      stages: { a: { lasts: 10 d, batch: fine, target: low, uses: 900 mL/d }, b: { lasts: 9 d, batch: hot }, c: {} }
      plantings:
        mint: { crop: lettuce, container: tub, stages: [a, b], keep-air-gap: 3 cm }
        dill: { container: tub, stages: [a, gone, c] }
      batches:
        fine: { water: brook, volume: 20 L, mix-in: can, target: low, feed: { salt: 0.4 g/L }, adjust: { with: down }, readings: [{ pH: 7.4 }, { add: { down: 5 mL }, pH: 7 }, { add: { gone: 1 g } }, 3, { EC: 1 mS/cm }] }
        hot: { water: hot, volume: 0 L, adjust: { with: dry, to: 15 }, readings: [{ pH: 15 }, { add: { dry: 1 mL } }] }
        sour: { water: acid, volume: 5 L, adjust: { with: none } , solve: to target, target: low, from: [odd, moss] }
        up: { water: brook, volume: 5 L, adjust: { with: thumb, to: 9 }, solve: to target, target: low }
      log:
        - { on: 2027-02-04, planting: mint, level: 9 cm, EC: 1.2 mS/cm, top-up: { water: gone, volume: 300 mL } }
        - { on: 2027-02-04, planting: mint, level: 99 cm }
        - { on: 2026-02-04, planting: gone, pH: 3 }
        - 4
    `;
    const taken = snapshot();
    for (let offset = 0; offset <= files[0].text.length; offset++) {
      const said = hover(taken, offset)?.markdown;
      if (said !== undefined) expect(said).not.toMatch(/undefined|NaN|Infinity|\[object/u);
    }
    for (const hint of hints(taken, { from: 0, to: files[0].text.length })) {
      expect(`${hint.text} ${hint.tooltip()}`).not.toMatch(/undefined|NaN|Infinity|\[object/u);
    }
  }
});
