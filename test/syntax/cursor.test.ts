import { expect, test } from 'vitest';
import { placeAt } from '../../server/syntax/cursor.ts';
import { openDocument } from '../../server/syntax/document.ts';

/** What stands at `$0`: `on path`, then the keys there already, what is typed, and what a completion would replace. */
function checkPlace(marked: string): string {
  const offset = marked.indexOf('$0');
  const text = marked.replace('$0', '');
  const cursor = placeAt(openDocument(text), offset);
  if (cursor === undefined) return 'nothing';
  const { from, to } = cursor.replaces;
  const unit = cursor.scalar === undefined ? '' : ` unit ${cursor.scalar.unit}`;
  return `${cursor.on} ${cursor.path.join('/')} in ${cursor.within.join('/')} [${cursor.present.join(' ')}] ${text.slice(from, to)}|${cursor.typed}${unit}${cursor.mayBeKey && cursor.on === 'value' ? ' may be key' : ''}${cursor.flow ? ' flow' : ''}`;
}

const head = 'recipe: 1\nfeeds:\n  green:\n    label: 2 mL/L\n    analysis: { N: 5 % }\n';

test('A key is found with the keys beside it', () => {
  expect(checkPlace('feeds:\n  green:\n    la$0bel: 2 mL/L\n    price: 3 EUR\n')).toBe(
    'key feeds/green/label in feeds/green [price] label|la unit 2',
  );
  expect(checkPlace('feeds:\n  gr$0een:\n    label: 1\n  blue:\n    label: 2\n')).toBe(
    'key feeds/green in feeds [blue] green|gr unit 2',
  );
  expect(checkPlace('re$0cipe: 1\nfeeds:\n  a: {}\n')).toBe('key recipe in  [feeds] recipe|re unit 2');
});

test('A value is found with the unit of what it says', () => {
  expect(checkPlace(`${head}`.replace('2 mL', '2 m$0L'))).toBe(
    'value feeds/green/label in feeds/green [] 2 mL/L|2 m unit 3',
  );
  expect(checkPlace('note: "\\u00e9$0x"\n')).toBe('value note in  [] "\\u00e9x"|"\\u00e9 unit 1');
});

test('A key without a value is a place for one', () => {
  expect(checkPlace('feeds:\n  green:\n    label: $0\n    price: 1\n')).toBe(
    'value feeds/green/label in feeds/green [] |',
  );
  expect(checkPlace('feeds:\n  green:$0\n')).toBe('value feeds/green in feeds [] |');
});

test('A word without a colon may become a key', () => {
  expect(checkPlace(`${head}  vol$0\n`)).toBe('key feeds/vol in feeds [green] vol|vol');
  expect(checkPlace(`${head}    vol$0\n`)).toMatch(
    /^key feeds\/green\/vol in feeds\/green \[label analysis\] vol\|vol/,
  );
  expect(checkPlace(`${head}vol$0`)).toBe('key vol in  [recipe feeds] vol|vol');
  expect(checkPlace('batches:\n  opening:\n    feed:\n      gre$0\n')).toMatch(
    /^value batches\/opening\/feed .* may be key$/,
  );
});

test('A blank line belongs to the map its indentation says', () => {
  expect(checkPlace(`${head}$0\n`)).toBe('blank  in  [recipe feeds] |');
  expect(checkPlace(`${head}  $0\n`)).toBe('blank feeds in feeds [green] |');
  expect(checkPlace(`${head}    $0\nwaters:\n`)).toBe('blank feeds/green in feeds/green [label analysis] |');
  expect(checkPlace('feeds:\n  $0\n')).toBe('blank feeds in feeds [] |');
  expect(checkPlace('feeds:\n  green:\n    $0\n')).toBe('blank feeds/green in feeds/green [] |');
  expect(checkPlace('feeds:\n  green:\n    label: 1\n\n    $0\n  blue:\n    label: 1\n')).toBe(
    'blank feeds/green in feeds/green [label] |',
  );
});

test('Braces and brackets are known by their commas', () => {
  expect(checkPlace('ions: { Ca: 1, $0 }\n')).toBe('blank ions in ions [Ca] | flow');
  expect(checkPlace('ions: { Ca: 1, M$0 }\n')).toBe('key ions/M in ions [Ca] M|M unit 1 flow');
  expect(checkPlace('ions: { Ca: $0 }\n')).toBe('value ions/Ca in ions [] | flow');
  expect(checkPlace('ions: { Ca: 1, $0')).toBe('blank ions in ions [Ca] | flow');
  expect(checkPlace('use: [a, $0]\n')).toBe('blank use in use [] | flow');
});

test('List items count from the top of the file', () => {
  const log = 'log:\n  - { on: 2027-03-01 }\n  - on: 2027-03-02\n    pH: 6.$02\n';
  expect(checkPlace(log)).toBe('value log/1/pH in log/1 [] 6.2|6. unit 2');
  expect(checkPlace('log:\n  - on: 2027-03-02\n    $0\n')).toBe('blank log/0 in log/0 [on] |');
  expect(checkPlace('log:\n  - on: 1\n  - on: 2\n    l$0\n')).toMatch(/^key log\/1\/l in log\/1 \[on\] l\|l/);
  expect(checkPlace('log:\n  - on: 1\n  - o$0\n')).toBe('value log/1 in log [] o|o unit 1 may be key');
});

test('Comments are no place', () => {
  expect(checkPlace('a: 1 # no$0te\n')).toBe('nothing');
  expect(checkPlace('# $0\na: 1\n')).toBe('nothing');
});
