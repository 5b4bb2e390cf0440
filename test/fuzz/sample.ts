// A recipe that uses every section and most forms of value, and a shelf that it borrows from: what the mutations start from.

export const shelf = `recipe: 1
title: Cellar shelf
feeds:
  tonic:
    label: 1 tsp/gal
    analysis: { N: 3 %, P2O5: 1.5 %, K2O: 4 %, Mg: 0.5 % }
    nitrogen: { nitrate: 2.6 %, ammonium: 0.4 % }
    density: 1.1 kg/L
tools:
  pipette: { smallest: 0.1 mL, largest: 5 mL }
  ladle: { steps: [2.5 mL, 5 mL, 15 mL] }
`;

export const sample = `# The stairwell, north side
recipe: 1
title: "Stairwell mint & chard"   # two crops 🌿
start: 2027-03-01
show: metric
use: [./shelf.grow.yaml]

waters:
  well:
    pH: 7.4
    alkalinity: 3.1 meq/L
    EC: 0.51 mS/cm
    ions: { Ca: 58 mg/L, Mg: 9 mg/L, NO3-N: 4 mg/L }
  roof: { alkalinity: 0 mg/L CaCO3 }

feeds:
  bitter:
    formula: MgSO4·7H2O
    purity: 98 %
    for: [leafing, cutting]

adjusters:
  down: { acid: { citric: 8 % }, density: 1.03 kg/L }
  by-drop: { response: -0.6 pH at 0.3 mL/L }

tools:
  tub: { holds: 9 L, fill: 90 % }

containers:
  crate:
    inside: { box: { length: 38 cm, width: 26 cm, height: 18 cm } }
    net-cup: { depth: 5 cm, top: 5 cm, bottom: 4 cm }
    opaque: true
  urn:
    inside:
      profile:
        - { at: 0 cm, area: 60 cm2 }
        - { at: 12 cm, area: 95 cm2 }
        - { at: 20 cm, area: 70 cm2 }

targets:
  mild: { pH: 5.5..6.5, pH-aim: 5.9, EC: 0.9..1.4 mS/cm, K: 80..160 mg/L }

stages:
  leafing: { lasts: 21 d, target: mild, batch: first, uses: 60 mL/d }
  cutting: { lasts: 6 wk, target: mild, batch: second }

plantings:
  mint:
    crop: mint
    container: crate
    count: 2
    plants: 3
    transplant: 2027-03-10
    fill: 5 mm into net cup
    keep-air-gap: 4 cm
    stages: [leafing, cutting]
  chard: { container: urn, fill: 16 cm, stages: [leafing] }

batches:
  first:
    water: well
    volume: as needed
    mix-in: tub
    feed: { tonic: label, bitter: 120 mg/L }
    adjust: { with: down, to: 5.9 }
    readings:
      - { pH: 7.1 }
      - { add: { down: 3 mL }, pH: 6.4, EC: 1.1 mS/cm }
  second: { water: roof, volume: 26 L, air: open, feed: { tonic: 50 % of label, bitter: 2 g }, adjust: { with: by-drop } }

log:
  - { on: 2027-03-12, planting: mint, pH: 6.1, level: 12.5 cm }
  - on: 2027-03-20
    planting: chard
    top-up: { batch: first, volume: 400 mL }
    note: |
      leaves a little pale
      looked again at noon
`;
