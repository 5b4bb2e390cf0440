// What each kind of broken YAML is called, in a grower's words. Apart from the reader, because it is a table.

import type { ErrorCode } from 'yaml';

/** Completes the sentence "This is not YAML: …". */
export const reasons: Record<ErrorCode, string> = {
  ALIAS_PROPS: 'a repeat (*name) takes no anchor or tag of its own',
  BAD_ALIAS: 'a repeat (*name) or an anchor (&name) lacks its name',
  BAD_COLLECTION_TYPE: 'the tag before this list or map does not fit it',
  BAD_DIRECTIVE: 'this line begins with %, which YAML keeps for itself',
  BAD_DQ_ESCAPE: 'no such escape after the backslash; in double quotes a backslash is written twice',
  BAD_INDENT: 'the spaces before this line fit no line above it',
  BAD_PROP_ORDER: 'an anchor or tag stands after its value began',
  BAD_SCALAR_START: 'a text that begins with this sign must stand in quotes',
  BLOCK_AS_IMPLICIT_KEY: 'a second key with a colon on one line; put the value in quotes, or the key on its own line',
  BLOCK_IN_FLOW: 'inside braces and brackets everything is written with commas, not with dashes or on lines of its own',
  DUPLICATE_KEY: 'this key stands in its map twice',
  IMPOSSIBLE: 'this cannot be read',
  KEY_OVER_1024_CHARS: 'a key longer than 1024 characters',
  MISSING_CHAR: 'a sign is missing here',
  MULTILINE_IMPLICIT_KEY: 'a key runs over more than one line; is its colon missing?',
  MULTIPLE_ANCHORS: 'two anchors before one value',
  MULTIPLE_DOCS: 'a second document begins here',
  MULTIPLE_TAGS: 'two tags before one value',
  NON_STRING_KEY: 'a key must be a text',
  RESOURCE_EXHAUSTION: 'lists and maps stand too deep inside each other',
  TAB_AS_INDENT: 'a tab stands before this line; YAML indents with spaces only',
  TAG_RESOLVE_FAILED: 'tags (!name) mean nothing here',
  UNEXPECTED_TOKEN: 'this does not fit here',
};

/** For what the reader finds itself. */
export const ownReasons = {
  unclosedMap: 'this brace { is never closed',
  unclosedList: 'this bracket [ is never closed',
  unclosedQuote: 'this quote is never closed',
  missingColon: 'a colon is missing after this key',
  missingColonOrComma: 'a colon or a comma is missing here',
  missingSpace: 'a space is missing here',
  keyIsNotText: 'a key must be a text',
  tooDeep: 'lists and maps stand too deep inside each other',
  unknownAlias: 'no value above is marked with this name (&name)',
  selfContaining: 'this repeat (*name) stands inside the value it repeats',
} as const;
