import { expect, test } from 'vitest';
import { dayOf } from '../../schema/date.ts';
import { pagesHtml } from '../../server/reports/print/html.ts';
import { pagesMarkdown } from '../../server/reports/print/markdown.ts';
import { widthOf } from '../../server/reports/print/terminal.ts';
import { pagesText } from '../../server/reports/print/text.ts';
import { dueBatch, type SheetAsked, sheet } from '../../server/reports/sheet.ts';
import { type MarkedRecipe, recipe } from '../recipe.ts';

const season = (batch = '', volume = '10 L') => recipe`
  recipe: 1
  title: Stairwell greens
  waters:
    brook: { pH: 7.8, alkalinity: 140 mg/L CaCO3, EC: 0.4 mS/cm, temperature: 12 °C }
  feeds:
    calcium: { formula: Ca(NO3)2·4H2O }
    magnesium: { formula: MgSO4·7H2O }
  adjusters:
    down: { acid: { phosphoric: 12 % }, density: 1.06 kg/L }
  tools:
    syringe: { smallest: 0.5 mL, largest: 10 mL }
    scale: { smallest: 0.1 g, largest: 200 g }
    can: { holds: 12 L }
  containers:
    crock:
      inside: { cylinder: { diameter: 14 cm, height: 20 cm } }
      net-cup: { depth: 6 cm, top: 7 cm, bottom: 5 cm }
  targets:
    leafy: { pH: 5.5..6.5, pH-aim: 5.8, EC: 1.0..1.6 mS/cm }
  stages:
    leaf: { lasts: 35 d, target: leafy, batch: opening, uses: 60 mL/d }
  plantings:
    basil: { container: crock, count: 3, transplant: 2027-03-20, stages: [leaf], keep-air-gap: 3 cm }
  batches:
    opening: { water: brook, volume: ${volume}, feed: { calcium: 0.6 g/L, magnesium: 0.3 g/L }, adjust: { with: down }${batch} }
`;

function textOf(of: MarkedRecipe, asked: SheetAsked = { kind: 'batch', name: 'opening' }): string {
  return pagesText(sheet(of.snapshot(), asked) ?? []);
}

/** The lines under a heading of a sheet. */
function part(text: string, heading: string): string {
  const lines = text.split('\n');
  const from = lines.findIndex(line => line.startsWith(heading));
  const end = lines.findIndex((line, at) => at > from && line === '');
  return lines.slice(from, end).join('\n');
}

test('water and feed, measured with the tools, in the order in which they are added', () => {
  const text = textOf(season());
  expect(text.split('\n').slice(0, 2)).toEqual([
    'Bench sheet: batch opening',
    'Stairwell greens; for basil; due on 2027-03-20',
  ]);
  expect(`${part(text, 'Water')}\n${part(text, 'Feed')}`).toMatchInlineSnapshot(`
    "Water
      [ ] Begin with about nine tenths of 10 L of brook at 12 °C.
    Feed, in this order
      add        amount  measured as     done
      ---------  ------  --------------  ----
      calcium       6 g  6 g with scale  [ ]
      magnesium     3 g  3 g with scale  [ ]
      Stir each one in before the next.
      Calcium (calcium) and sulfate or phosphate (magnesium) must never meet
      undiluted: they fall out as a white solid. Rinse the tool between them."
  `);
});

test('calcium and sulfate of one and the same feed need no warning', () => {
  const alone = recipe`
    recipe: 1
    waters: { brook: { pH: 7 } }
    feeds: { gypsum: { formula: CaSO4·2H2O }, saltpetre: { formula: KNO3 } }
    batches: { opening: { water: brook, volume: 10 L, feed: { gypsum: 1 g/L, saltpetre: 1 g/L } } }
  `;
  expect(textOf(alone)).not.toContain('undiluted');
});

test('room for what is measured, beside what is to be expected', () => {
  expect(part(textOf(season()), 'Stir and measure')).toMatchInlineSnapshot(`
    "Stir and measure
      [ ] Make up to 10 L with water, stir well, then measure.
      pH ________  (about 7.72, wanted 5.5..6.5)
      EC ________  (about 1.18 mS/cm, wanted 1..1.6 mS/cm)"
  `);
});

test('the adjustment goes step by step under its cautions', () => {
  const text = part(textOf(season()), 'Adjust');
  expect(text).toMatch(/^Adjust with down to pH 5\.8\n {2}! Caution: .*gloves/);
  expect(text.replaceAll('\n  ! ', ' ')).toContain('Pour acid into water, never water into acid.');
  const rows = text.split('\n').filter(line => /^ +\d /.test(line));
  expect(rows.length).toBeGreaterThanOrEqual(3);
  for (const row of rows) expect(row).toMatch(/^ +\d +[\d.]+ mL +about \d\.\d+ +_{8}$/);
  const pHs = rows.map(row => Number(/about (\d\.\d+)/.exec(row)?.[1]));
  expect(pHs).toEqual([...pHs].sort((a, b) => b - a));
  expect(pHs.at(-1)).toBeCloseTo(5.8, 1);
});

test('what was measured already is said, and the steps go on from it', () => {
  const text = textOf(season(', readings: [{ pH: 7.5 }, { add: { down: 8 mL }, pH: 6.4 }]'));
  expect(text).toContain('In the recipe already: pH 7.5; after 8 mL down pH 6.4.');
  expect(text).toContain('From pH 6.4 about');
});

test('acid that was added already has its cautions, even where no adjustment is asked for', () => {
  const text = textOf(
    recipe`${season(', readings: [{ add: { down: 8 mL }, pH: 6.4 }]').files[0].text.replace(', adjust: { with: down }', '')}`,
  );
  expect(text).toContain('after 8 mL down pH 6.4');
  expect(part(text, 'Acids and bases')).toContain('gloves');
});

test('a batch in loads is measured and adjusted load by load', () => {
  const text = textOf(season(', mix-in: can', '20 L'));
  expect(part(text, 'Water')).toContain('20 L of brook at 12 °C, mixed in can as 2 loads of 10 L.');
  expect(part(text, 'Feed')).toMatch(/^Feed, for each load, in this order\n[\s\S]*calcium +6 g .* \[ \] \[ \]/);
  expect(part(text, 'Stir and measure')).toMatch(/load +pH +EC\n[\s\S]* 1 +_{8} +_{8}\n +2 +_{8} +_{8}/);
  expect(part(text, 'Adjust')).toMatch(/each load by itself\n[\s\S]*pH, load 1 +pH, load 2\n/);
  // The acid for one load is that of a batch of its size.
  const steps = (of: string) => part(of, 'Adjust').match(/^ +\d +[\d.]+ mL/gm);
  expect(steps(text)).toEqual(steps(textOf(season())));
});

test('each planting has its volume, its level and boxes; the rest is said', () => {
  expect(part(textOf(season()), 'Fill')).toMatchInlineSnapshot(`
    "Fill
      planting  containers  into each  up to  filled
      --------  ----------  ---------  -----  -----------
      basil              3     2.16 L  14 cm  [ ] [ ] [ ]
      Left over: 3.53 L."
  `);
});

test('errors and warnings of the batch stand before anything is poured', () => {
  const text = textOf(season(', target: lefy'));
  expect(part(text, 'Before you begin')).toContain('name-unknown: ');
});

test('what is not known is said and not guessed', () => {
  const bare = recipe`
    recipe: 1
    waters: { brook: { pH: 7 } }
    feeds: { green: {} }
    adjusters: { down: { density: 1.06 kg/L } }
    batches: { opening: { water: brook, volume: 10 L, feed: { green: label }, adjust: { with: down, to: 5.8 } } }
  `;
  const text = textOf(bare);
  expect(text).toContain('not known: the label’s rate');
  expect(text).toMatch(/How much is not known: .*\n?.*smallest amount/);
  expect(text).toContain('gloves');
});

test('a day has its tasks with their amounts, its batches on sheets of their own, and the levels to expect', () => {
  const asked = { kind: 'day', date: dayOf(2027, 3, 20) } as const;
  const [day = '', batch = ''] = textOf(season(), asked).split('\f');
  expect(day.split('\n')[0]).toBe('Bench sheet: Saturday, 2027-03-20');
  expect(part(day, 'To do')).toMatchInlineSnapshot(`
    "To do
      [ ] mix opening: 10 L, on a sheet of its own
      [ ] fill the containers of basil with opening: 3 × 2.16 L, up to 14 cm
      [ ] set the plugs of basil over the solution; a plug is ready when its first
          root shows"
  `);
  expect(part(day, 'Measure')).toMatch(/basil +leaf +14 cm +_{8}/);
  expect(batch).toMatch(/^Bench sheet: batch opening\n/);
});

test('a day of a top-up says how much and never above which level', () => {
  const hungry = recipe`${season().files[0].text.replace('60 mL/d', '120 mL/d')}`;
  const text = textOf(hungry, { kind: 'day', date: topUpDay(hungry) });
  expect(part(text, 'Top-ups')).toMatch(/basil +3 +about [\d.]+ m?L +\w+ +11 cm +\[ \] \[ \] \[ \]/);
});

test('a day without tasks says what comes next', () => {
  const text = textOf(season(), { kind: 'day', date: dayOf(2027, 1, 1) });
  expect(text).toContain('Nothing is due on this day. Next: ');
});

test('without a word the batch due next is taken', () => {
  const snapshot = season().snapshot();
  expect(dueBatch(snapshot, dayOf(2027, 3, 1))).toEqual({ name: 'opening', on: dayOf(2027, 3, 20) });
  expect(dueBatch(snapshot, dayOf(2028, 1, 1))?.name).toBe('opening');
  expect(dueBatch(recipe`recipe: 1`.snapshot(), dayOf(2028, 1, 1))).toBeUndefined();
});

test('a sheet fits a page: sixty lines of eighty columns', () => {
  const lines = textOf(season(', mix-in: can, readings: [{ pH: 7.5 }, { add: { down: 8 mL }, pH: 6.4 }]', '30 L'))
    .trimEnd()
    .split('\n');
  expect(lines.length).toBeLessThanOrEqual(60);
  expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(80);
});

test('as Markdown, names cannot become anything else', () => {
  const sheets = sheet(season().snapshot(), { kind: 'batch', name: 'opening' }) ?? [];
  const text = pagesMarkdown(sheets.map(page => ({ ...page, title: '<b>*a*|[b](c)' })));
  expect(text).toMatch(/^# &lt;b\\>\\\*a\\\*\\\|\\\[b\\\]\(c\)\n/);
  expect(text).toContain('- [ ] Begin with about nine tenths of 10 L');
  expect(text).toContain('| --- | ---: | --- | --- |');
  expect(text).toContain('> **Caution:** ');
});

test('as HTML it is one file without script, with headings, captions and labels, and everything escaped', () => {
  const titled = recipe`${season().files[0].text.replace('Stairwell greens', '"<script>alert(1)</script> & \'x\'"')}`;
  const html = pagesHtml(sheet(titled.snapshot(), { kind: 'batch', name: 'opening' }) ?? []);
  expect(html).toMatch(/^<!doctype html>\n<html lang="en">/);
  expect(html).not.toMatch(/<script|https?:|<img|<link|\bon\w+=/);
  expect(html).toContain('&#60;script&#62;alert(1)&#60;/script&#62; &#38; &#39;x&#39;');
  expect(html.match(/<h1>/g)?.length).toBe(1);
  expect(html.match(/<table>/g)?.length).toBe(html.match(/<caption>/g)?.length);
  const unlabelled = html.match(/<(?:input)(?![^>]*aria-label)[^>]*>/g) ?? [];
  // Those without a label of their own stand inside one.
  const inside = html.match(/<label>[^<]*<input[^>]*>/g) ?? [];
  expect(unlabelled.length).toBe(inside.length);
  expect(Buffer.byteLength(html)).toBeLessThan(12_000);
});

function topUpDay(of: MarkedRecipe) {
  for (let day = dayOf(2027, 3, 21); day < dayOf(2027, 5, 1); day = (day + 1) as typeof day) {
    const [page] = sheet(of.snapshot(), { kind: 'day', date: day }) ?? [];
    if (page?.sections.some(({ heading }) => heading.startsWith('Top-ups'))) return day;
  }
  throw new Error('no top-up');
}
