// A recipe to start from: small, whole, with a remark to each part. It checks clean and plans as it stands, so that whoever changes
// one number sees what that number does.

import { addDays, type Day, formatDate } from '../../schema/date.ts';

export function starter(show: 'metric' | 'us', start: Day): string {
  const by = (metric: string, us: string): string => (show === 'us' ? us : metric);
  const planted = formatDate(addDays(start, 14));
  return `# A recipe to start from: mint and chives in two crocks on a sill. Change what is different on your bench; every number that
# follows from it is computed. Hover over a value in an editor, or run \`tidemark plan\` on this file.
recipe: 1
title: A sill of herbs
start: ${formatDate(start)} # day 0
show: ${show} # metric | us: how amounts are shown; what is computed stays the same

# The water you begin with, from its yearly report or a test kit. Alkalinity, not pH, decides how much acid a batch takes.
waters:
  tap:
    pH: 7.6
    alkalinity: 90 mg/L CaCO3
    EC: 0.35 mS/cm
    temperature: ${by('18 °C', '64 °F')}
    ions: { Ca: 34 mg/L, Mg: 6 mg/L, Na: 11 mg/L, Cl: 14 mg/L, SO4: 19 mg/L }

# The bottles. \`label\` is the rate that the label gives for solution that does not circulate; the label overrules this file.
feeds:
  herbal:
    label: ${by('5 mL/L', '19 mL/gal')}
    analysis: { N: 2.4 %, P2O5: 1 %, K2O: 3.2 %, Ca: 1.2 %, Mg: 0.3 % }
    nitrogen: { nitrate: 2.2 %, ammonium: 0.2 % }
    density: 1.12 kg/L
    package: ${by('1 L', '1 qt')}

# What brings the pH down. Acids burn, thinned ones too: gloves and eye protection, acid into water and never the other way, a little
# at a time, stirred and measured; never with a chlorine product; out of the reach of children.
adjusters:
  down: { acid: { phosphoric: 5 % }, density: 1.03 kg/L }

# What you can measure with, and what you mix in.
tools:
  syringe: { smallest: 0.5 mL, largest: 20 mL }
  ${by('bucket: { holds: 12 L }', 'bucket: { holds: 3 gal }')}

# Inner measures. The net cup hangs from the rim and takes the place of some solution.
containers:
  crock:
    inside: { cylinder: { diameter: ${by('18 cm, height: 20 cm', '7 in, height: 8 in')} } }
    net-cup: { depth: ${by('6 cm, top: 7 cm, bottom: 5 cm', '2.25 in, top: 2.75 in, bottom: 2 in')} }
    opaque: true # light in the solution grows algae

# What the solution should be like.
targets:
  leafy: { pH: 5.5..6.5, pH-aim: 5.9, EC: 0.9..1.7 mS/cm }

# How long a stage lasts, what it is fed from, and what one plant drinks.
stages:
  leaf: { lasts: 6 wk, target: leafy, batch: first, uses: ${by('40 mL/d', '1.25 fl_oz/d')} }

plantings:
  mint:
    crop: mint
    container: crock
    count: 1
    transplant: ${planted}
    fill: ${by('5 mm', '1/4 in')} into net cup # the plug drinks until the first root hangs out
    keep-air-gap: ${by('4 cm', '1.5 in')} # the roots in this air must not be drowned by a top-up
    stages: [leaf]
  chives:
    crop: chives
    container: crock
    count: 1
    transplant: ${planted}
    fill: ${by('5 mm', '1/4 in')} into net cup
    keep-air-gap: ${by('4 cm', '1.5 in')}
    stages: [leaf]

batches:
  first:
    water: tap
    volume: ${by('10 L', '2.5 gal')} # or \`as needed\`: what the fills come to, and a little to spare
    mix-in: bucket
    feed: { herbal: label } # or \`50 % of label\`, \`4 mL/L\`, \`20 mL\`
    adjust: { with: down } # to the aim of the target; the amount is computed, the meter decides
    # Write down what you measure, and the rest is reckoned from it:
    # readings:
    #   - { pH: 6.9, EC: 1.3 mS/cm }
    #   - { add: { down: 5 mL }, pH: 6.2 }
`;
}
