// Draws a valid recipe of about so many lines, the same one for the same seed: what the measurements of speed are made on.

import { type Random, randomFrom } from './random.ts';

/** A recipe as a busy nursery might keep it in one file. Every reference has its entry, and no text is wrong. */
export function makeRecipe(lines: number, seed = 1): string {
  const random = randomFrom(seed);
  // One block of entries is about 100 lines long, so that sections grow together with the file.
  const blocks = Math.max(1, Math.round((lines - 40) / linesOfBlock));
  const names = (stem: string, each: number) =>
    Array.from({ length: blocks * each }, (_, index) => `${stem}-${index + 1}`);
  const waters = names('spring', 1);
  const feeds = names('feed', 2);
  const targets = names('band', 1);
  const batches = names('mix', 4);
  const stages = names('phase', 4);
  const containers = names('crock', 1);
  const plantings = names('row', 2);
  const text = [
    'recipe: 1',
    'title: Nursery on the quay',
    'start: 2027-02-01',
    '',
    'waters:',
    ...waters.flatMap(name => water(name, random)),
    '',
    'feeds:',
    ...feeds.flatMap(name => feed(name, random)),
    '',
    'adjusters:',
    '  down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }',
    '',
    'tools:',
    '  syringe: { smallest: 0.5 mL, largest: 20 mL }',
    '  jug: { smallest: 10 mL, largest: 500 mL }',
    '  can: { holds: 12 L }',
    '  barrel: { holds: 120 L }',
    '',
    'containers:',
    ...containers.flatMap(name => container(name, random)),
    '',
    'targets:',
    ...targets.flatMap(name => target(name, random)),
    '',
    'stages:',
    ...stages.map((name, index) => stage(name, random.of(targets), batches[index] ?? '', random)),
    '',
    'plantings:',
    ...plantings.flatMap((name, index) => planting(name, index, containers, stages.slice(index * 2, index * 2 + 2))),
    '',
    'batches:',
    ...batches.flatMap((name, index) => batch(name, waters[index % waters.length] ?? '', feeds, random)),
    '',
    'log:',
    ...[1, 2, 3].flatMap(day => plantings.map(planting => log(planting, day))),
  ];
  return `${text.join('\n')}\n`;
}

const linesOfBlock = 98.5;

function water(name: string, random: Random): string[] {
  return [
    `  ${name}:`,
    `    pH: ${random.number(6.8, 8.1, 1)}`,
    `    alkalinity: ${random.number(20, 220, 0)} mg/L CaCO3`,
    `    EC: ${random.number(0.2, 0.7, 2)} mS/cm`,
    `    ions: { Ca: ${random.number(10, 80, 0)} mg/L, Mg: ${random.number(2, 20, 0)} mg/L } # by the yearly report`,
  ];
}

function feed(name: string, random: Random): string[] {
  const nitrogen = random.number(2, 7, 1);
  return [
    `  ${name}:`,
    `    label: ${random.number(1, 4, 1)} mL/L`,
    `    analysis: { N: ${nitrogen} %, P2O5: ${random.number(1, 5, 1)} %, K2O: ${random.number(3, 8, 1)} % }`,
    `    nitrogen: { nitrate: ${nitrogen} % }`,
    `    density: ${random.number(1.05, 1.25, 2)} kg/L`,
    '    package: 1 L',
  ];
}

function container(name: string, random: Random): string[] {
  return [
    `  ${name}:`,
    `    inside: { cylinder: { diameter: ${random.number(12, 24, 0)} cm, height: ${random.number(18, 30, 0)} cm } }`,
    '    net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }',
    '    opaque: true',
  ];
}

function target(name: string, random: Random): string[] {
  return [
    `  ${name}: { pH: 5.5..6.5, pH-aim: ${random.number(5.7, 6.2, 1)}, EC: 0.1..9.9 mS/cm }`,
    '    # set by eye in the second year',
  ];
}

function stage(name: string, target: string, batch: string, random: Random): string {
  const uses = `${random.number(4, 9, 0)} mL/d`;
  return `  ${name}: { lasts: ${random.number(10, 40, 0)} d, target: ${target}, batch: ${batch}, uses: ${uses} }`;
}

function planting(name: string, index: number, containers: readonly string[], stages: readonly string[]): string[] {
  return [
    `  ${name}:`,
    '    crop: chicory',
    `    container: ${containers[index % containers.length] ?? ''}`,
    '    count: 4',
    `    transplant: ${dayAfter(0)}`,
    '    fill: to net cup',
    `    stages: [${stages.join(', ')}]`,
  ];
}

function batch(name: string, water: string, feeds: readonly string[], random: Random): string[] {
  const first = random.of(feeds);
  const second = random.of(feeds.filter(feed => feed !== first));
  return [
    `  ${name}:`,
    `    water: ${water}`,
    `    volume: ${random.number(60, 110, 0)} L`,
    `    mix-in: ${random.of(['barrel', 'can'])}`,
    `    temperature: ${random.number(15, 22, 0)} °C`,
    '    # stirred by hand, left over night',
    '    feed:',
    `      ${first}: label`,
    ...(second === undefined ? [] : [`      ${second}: ${random.number(40, 90, 0)} % of label # half in spring`]),
    '    adjust: { with: down, to: 5.8 }',
    '    readings:',
    '      - { pH: 7.2 }',
    `      - { add: { down: ${random.number(5, 30, 0)} mL }, pH: 6.4 }`,
  ];
}

function log(planting: string, day: number): string {
  return `  - { on: ${dayAfter(day)}, planting: ${planting}, pH: 6.0, note: a quiet day }`;
}

function dayAfter(days: number): string {
  return new Date(Date.UTC(2027, 2, 1 + days)).toISOString().slice(0, 10);
}
