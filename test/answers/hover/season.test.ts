import { test } from 'vitest';
import { checkHover } from '../../check-hover.ts';
import { dedent, type MarkedRecipe, markedRecipe, recipe } from '../../recipe.ts';

const shelf = `
recipe: 1
waters:
  brook: { pH: 7.6, alkalinity: 40 mg/L CaCO3, EC: 0.12 mS/cm, temperature: 18 °C }
feeds:
  lime: { formula: Ca(NO3)2·4H2O, package: 20 g, price: 4 EUR }
  salt: { formula: KNO3 }
containers:
  tub:
    inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } }
    net-cup: { depth: 5 cm, top: 6 cm, bottom: 5 cm }
targets: { low: { pH: 5.5..6.5, EC: 1.0..1.6 mS/cm } }
stages:
  start: { lasts: 10 d, target: low, batch: first, uses: 60 mL/d }
  grow: { lasts: 25 d, target: low, batch: first, uses: 250 mL/d }
  leaf: { lasts: 30 d, target: low, batch: first }
`.trim();

const batches = `
batches:
  first: { water: brook, volume: 20 L, feed: { lime: 0.6 g/L, salt: 0.3 g/L } }
`.trim();

/** A recipe that borrows from the shelf. */
function bench([text = '']: TemplateStringsArray): MarkedRecipe {
  return markedRecipe(
    `recipe: 1\nuse: [./shelf.grow.yaml]\n${batches}\n${dedent(text)}\n#-- shelf.grow.yaml\n${shelf}\n`,
  );
}

test('a planting: its stages by date, what stands in a container, when it runs low, what tops it up', () => {
  checkHover(bench`
    plantings:
      cr$0ess: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, stages: [start, grow] }
  `).toMatchInlineSnapshot(`
    "  cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, stages: [start, grow] }
      ▔▔↑▔▔
    cress, a planting: 6 L

    |  | from | fed by | level | air gap | EC |
    | start | 2027-02-01 | first | 15 cm | 0 mm | 1.11 mS/cm |
    | grow | 2027-02-11 | first | 13.5 cm | 1.5 cm | 1.1 mS/cm |
    | harvest | 2027-03-08 |  | 1.675 cm | 13.3 cm | 0.214 mS/cm |

    One fill does not last the crop: without a top-up it stands too low on 2027-03-03.

    Top-ups for each container:

    - 2027-03-02: 1.52 L of first, up to 5.425 cm

    Each container: 6 L, to a level of 15 cm

    volume = 6 L − 0 mL = 6 L

    - level: 15 cm, the level at which the solution touches the net cup
    - inside up to the level: 6 L
    - displaced by the net cup: 0 mL

    line = 20 cm − 5 cm = 15 cm

    - height: 20 cm, containers › tub › inside › box › height in shelf.grow.yaml
    - depth: 5 cm, containers › tub › net-cup › depth in shelf.grow.yaml

    Volumes of cylinder, box, frustum and prismatoid (elementary geometry) · The grow recipe format, version 1"
  `);
});

test('on its stages the day it runs low is explained', () => {
  checkHover(bench`
    plantings:
      cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, st$0ages: [start, grow] }
  `).toMatchInlineSnapshot(`
    "  cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, stages: [start, grow] }
                                                                           ▔▔↑▔▔▔
    |  | from | fed by | level | air gap | EC |
    | start | 2027-02-01 | first | 15 cm | 0 mm | 1.11 mS/cm |
    | grow | 2027-02-11 | first | 13.5 cm | 1.5 cm | 1.1 mS/cm |
    | harvest | 2027-03-08 |  | 1.675 cm | 13.3 cm | 0.214 mS/cm |

    One fill does not last the crop: without a top-up it stands too low on 2027-03-03.

    Top-ups for each container:

    - 2027-03-02: 1.52 L of first, up to 5.425 cm

    days until use × 1, day by day, comes to more than 6 L − 520 mL: 30 d

    - volume: 6 L, the solution in one container
    - low: 520 mL, the solution in one container
    - uses: 60 mL/d, what the plants of one container drink in a day
    - uses: 250 mL/d, what the plants of one container drink in a day
    - factor: 1, assumed: no level has shown another use

    Kratky, B.A.: Growing lettuce in non-aerated, non-circulated hydroponic systems. Journal of Vegetable Science 11(2) · The grow recipe format, version 1 · Volumes of cylinder, box, frustum and prismatoid (elementary geometry)

    stages

    The stages the planting goes through, in order.

    stages: [rooting, bearing]"
  `);
});

test('a use that is published is a range, with its source', () => {
  checkHover(bench`
    plantings: { head: { crop: lettuce, container: tub, plants: 2, transplant: 2027-02-01, st$0ages: [leaf] } }
  `).toMatchInlineSnapshot(`
    "plantings: { head: { crop: lettuce, container: tub, plants: 2, transplant: 2027-02-01, stages: [leaf] } }
                                                                                           ▔▔↑▔▔▔
    |  | from | fed by | level | air gap | EC |
    | leaf | 2027-02-01 | first | 15 cm | 0 mm | 1.11 mS/cm |
    | harvest | 2027-03-03 |  | 1.59 cm | 13.4 cm | 0.255 mS/cm |

    One fill does not last the crop: without a top-up it stands too low on 2027-03-02.
    By the range that is published: on 2027-02-25 at the earliest, not before harvest at the latest.
    Published for lettuce in these days: 6 L to 12 L a container (Kratky, B.A.: A suspended net-pot, non-circulating hydroponic method for commercial production of leafy, romaine, and semi-head lettuce. University of Hawaii CTAHR, VC-1); its fill is 6 L.

    Top-ups for each container:

    - 2027-03-01: 836 mL of first, up to 4.49 cm

    days until use × 1, day by day, comes to more than 6 L − 520 mL: 29 d

    - volume: 6 L, the solution in one container
    - low: 520 mL, the solution in one container
    - uses: 193 mL/d, what the plants of one container drink in a day
    - factor: 1, assumed: no level has shown another use

    Kratky, B.A.: Growing lettuce in non-aerated, non-circulated hydroponic systems. Journal of Vegetable Science 11(2) · The grow recipe format, version 1 · Volumes of cylinder, box, frustum and prismatoid (elementary geometry) · Common practice in the trade · Kratky, B.A.: A suspended net-pot, non-circulating hydroponic method for commercial production of leafy, romaine, and semi-head lettuce. University of Hawaii CTAHR, VC-1

    stages

    The stages the planting goes through, in order.

    stages: [rooting, bearing]"
  `);
});

test('one stage of a planting', () => {
  checkHover(bench`
    plantings: { cress: { container: tub, transplant: 2027-02-01, stages: [start, gr$0ow] } }
  `).toMatchInlineSnapshot(`
    "plantings: { cress: { container: tub, transplant: 2027-02-01, stages: [start, grow] } }
                                                                                  ▔▔↑▔
    grow of cress: 2027-02-11 to 2027-03-08; a container drinks 250 mL/d, fed by first"
  `);
});

test('a stage: its days in every planting, by the use that is written or published', () => {
  checkHover(recipe`
    recipe: 1
    containers: { tub: { inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } } } }
    stages: { le$0af: { lasts: 30 d } }
    plantings:
      head: { crop: lettuce, container: tub, transplant: 2027-02-01, stages: [leaf] }
      cress: { container: tub, transplant: 2027-02-08, stages: [leaf] }
      mint: { container: tub, stages: [leaf] }
  `).toMatchInlineSnapshot(`
    "stages: { leaf: { lasts: 30 d } }
              ▔▔↑▔
    leaf, a stage: 30 d

    - head: 2027-02-01 to 2027-03-03; by what is published (Kratky, B.A.: A suspended net-pot, non-circulating hydroponic method for commercial production of leafy, romaine, and semi-head lettuce. University of Hawaii CTAHR, VC-1) a container drinks 100 mL/d to 200 mL/d on the mean, taken as 103 mL/d
    - cress: 2027-02-08 to 2027-03-10. Not known yet; missing: what a plant drinks a day in leaf (stages › leaf › uses).
    - mint: Not known yet; missing: the day of transplanting (plantings › mint › transplant)."
  `);
});

test('the air gap that is kept says how high a top-up may go', () => {
  checkHover(bench`
    plantings:
      cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4$0 cm, stages: [start, grow] }
  `).toMatchInlineSnapshot(`
    "  cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, stages: [start, grow] }
                                                                     ▔↑▔▔
    Top up to 11 cm at most once roots hang: 4.4 L in a container.

    level = 15 cm − 4 cm = 11 cm

    - line: 15 cm, the level at which the solution touches the net cup
    - gap: 4 cm, plantings › cress › keep-air-gap

    Top-ups for each container:

    - 2027-03-02: 1.52 L of first, up to 5.425 cm

    top-up = volume 2.17 L − volume 650 mL = 1.52 L

    - after: 2.17 L, what a container holds after the top-up: what is drunk until the next change or harvest, never past the air gap
    - now: 650 mL, the solution in one container on that day

    Kratky, B.A.: Growing vegetable crops by non-circulating hydroponic methods. ASHS Annual Conference, abstract · The grow recipe format, version 1 · Common practice in the trade · Volumes of cylinder, box, frustum and prismatoid (elementary geometry) · Kratky, B.A.: Growing lettuce in non-aerated, non-circulated hydroponic systems. Journal of Vegetable Science 11(2)"
  `);
});

test('a log entry: forecast beside measured, bands, what the levels show of the use', () => {
  checkHover(bench`
    plantings:
      cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, stages: [start, grow] }
    log:
      - { on: 2027-02-08, planting: cress, pH: 6.7, EC: 1.3 mS/cm, le$0vel: 14 cm }
  `).toMatchInlineSnapshot(`
    "  - { on: 2027-02-08, planting: cress, pH: 6.7, EC: 1.3 mS/cm, level: 14 cm }
                                                                   ▔▔↑▔▔
    Logged on 2027-02-08: cress: pH 6.7, EC 1.3 mS/cm, level 14 cm

    |  | forecast | by the level |
    | in a container | 5.58 L | 5.6 L |

    pH 6.7: above, 5.5..6.5
    EC 1.3 mS/cm: in band, 1..1.6 mS/cm
    The logged levels together show 0.952 times the expected use.

    level

    The measured level above the floor of the container.

    level: 11.5 cm"
  `);
});

test('a logged top-up: the level and the EC it brings', () => {
  checkHover(bench`
    plantings:
      cress: { container: tub, transplant: 2027-02-01, keep-air-gap: 4 cm, stages: [start, grow] }
    log:
      - { on: 2027-02-14, planting: cress, top-up: { batch: first, volume: 4$000 mL } }
  `).toMatchInlineSnapshot(`
    "  - { on: 2027-02-14, planting: cress, top-up: { batch: first, volume: 400 mL } }
                                                                           ▔↑▔▔▔▔
    Logged on 2027-02-14: cress: top-up 400 mL

    The top-up brings each container to 12.6 cm, with an air gap of 2.375 cm and an EC of about 1.09 mS/cm.

    ────

    A top-up that drowns the air roots air-roots-drowned

    Roots that have grown in moist air take up oxygen there; under water they rot, and the plant wilts over a full container.

    How to mend it: Top up less, and more often. A container that has to be changed is filled to the same line.

    Kratky, B.A.: Growing vegetable crops by non-circulating hydroponic methods. ASHS Annual Conference, abstract; University of Florida IFAS Extension: Grow your own vegetables without soil"
  `);
});

test('a log entry of a day outside the planting', () => {
  checkHover(bench`
    plantings: { cress: { container: tub, transplant: 2027-02-01, stages: [start] } }
    log: [{ on: 2027-01$0-14, planting: cress, level: 14 cm }]
  `).toMatch(/Outside the days of cress, so no forecast\./);
});

test('a feed: what the plan uses, packages, cost, the day the first is used up', () => {
  checkHover(recipe`
    recipe: 1
    feeds: { li$0me: { formula: Ca(NO3)2·4H2O, package: 20 g, price: 4 EUR } }
    containers: { tub: { inside: { box: { length: 20 cm, width: 20 cm, height: 20 cm } } } }
    stages:
      start: { lasts: 10 d, batch: first, uses: 60 mL/d }
      grow: { lasts: 25 d, batch: second, uses: 80 mL/d }
    plantings: { cress: { container: tub, count: 2, fill: 12 cm, transplant: 2027-02-01, stages: [start, grow] } }
    batches:
      first: { volume: 12 L, feed: { lime: 12 g } }
      second: { volume: 10 L, feed: { lime: 10 g } }
  `).toMatchInlineSnapshot(`
    "feeds: { lime: { formula: Ca(NO3)2·4H2O, package: 20 g, price: 4 EUR } }
             ▔▔↑▔
    lime, a feed: Ca(NO3)2·4H2O

    Of its mass: Ca 17 %, N 11.9 %.

    first takes 12 g, second takes 10 g.

    Over the plan: 22 g, 2 packages, 8 EUR.
    The first package is used up on 2027-02-11."
  `);
});
