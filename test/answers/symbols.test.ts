import { test } from 'vitest';
import { checkSymbols } from '../check-symbols.ts';
import { recipe } from '../recipe.ts';

test('sections in the order of the text, entries with what they come to, the log by date', () => {
  checkSymbols(recipe`
    recipe: 1
    title: Stairwell
    batches:
      first: { volume: 20 L, feed: { moss: label, salt: 0.4 g/L } }
      later: { volume: as needed }
    waters:
      well: { pH: 7.4, alkalinity: 3 meq/L, EC: 0.4 mS/cm, temperature: 12 °C }
    feeds:
      moss: { label: 2 mL/L }
      salt: { formula: KNO3 }
    adjusters:
      down: { acid: { phosphoric: 12 % } }
      up: { response: 0.5 pH at 0.2 mL/L }
    tools:
      syringe: { smallest: 0.5 mL, largest: 10 mL }
      can: { holds: 12 L }
    containers:
      jug:
        inside: { cylinder: { diameter: 10 cm, height: 20 cm } }
        net-cup: { depth: 5 cm, top: 6 cm, bottom: 4 cm }
    targets:
      low: { pH: 5.5..6.5, EC: 0.8..1.2 mS/cm }
    stages:
      start: { lasts: 3 wk, batch: first }
    plantings:
      mint: { crop: mint, container: jug, count: 3 }
    log:
      - { on: 2027-03-01, planting: mint, pH: 6.2, EC: 1.3 mS/cm, level: 11.5 cm }
      - { on: 2027-03-09, planting: mint, top-up: { batch: first, volume: 400 mL } }
      - { note: thinned to one }
  `).toMatchInlineSnapshot(`
    "batches
      first  20 L, 40 mL moss, 8 g salt
      later
    waters
      well  pH 7.4, alkalinity 150 mg/L CaCO3, EC 0.4 mS/cm, 12 °C
    feeds
      moss  2 mL/L by its label
      salt  KNO3
    adjusters
      down  phosphoric acid 12 %
      up  0.5 pH at 0.2 mL/L
    tools
      syringe  steps of 0.5 mL, up to 10 mL
      can  holds 12 L
    containers
      jug  1.47 L brimful, 1.18 L to the net cup
    targets
      low  pH 5.5..6.5, EC 0.8..1.2 mS/cm
    stages
      start  21 d, fed by first
    plantings
      mint  mint, 3 × 1.18 L
    log
      2027-03-01  mint: pH 6.2, EC 1.3 mS/cm, level 11.5 cm
      2027-03-09  mint: top-up 400 mL
      no. 3  thinned to one"
  `);
});

test('a broken entry costs only its own line', () => {
  checkSymbols(recipe`
    recipe: 1
    feeds:
      moss: { label: 2 mL/L }
      broken: { label: [
      salt: { formula: KNO3 }
  `).toMatchInlineSnapshot(`
    "feeds
      moss  2 mL/L by its label
      broken
      salt  KNO3"
  `);
});
