// Our own messages beside the protocol's, typed once for both sides. The client may import this file and nothing else of the
// server, so it imports nothing but types.

import type { Recording, RecordingComplaint } from '../../schema/recording.ts';

/** Asks the client for a file's text, where the server cannot read files itself (a browser, a virtual file system). */
export const readFileRequest = 'tidemark/readFile';

export interface ReadFileParams {
  readonly uri: string;
}

/** The file's text, or why it cannot be had. */
export type ReadFileResult =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'none'; readonly why: 'absent' | 'unreadable' };

/** Asks the client for the recipes below a folder, those left out that its user has excluded. */
export const listFilesRequest = 'tidemark/listFiles';

export interface ListFilesParams {
  readonly folder: string;
}

export interface ListFilesResult {
  readonly uris: readonly string[];
}

/** Asks what can be recorded in a recipe; null where the server does not know the file. */
export const recordableRequest = 'tidemark/recordable';

export interface RecordableParams {
  readonly uri: string;
}

export interface Recordable {
  readonly plantings: readonly RecordableName[];
  readonly batches: readonly RecordableName[];
  /** What a top-up may come from beside a batch. */
  readonly waters: readonly RecordableName[];
  /** What may have been added to a batch: adjusters, then feeds. */
  readonly adders: readonly RecordableName[];
}

export interface RecordableName {
  readonly name: string;
  /** A few words by which to tell it from the others. */
  readonly detail: string;
}

/** Asks for the edit that writes a reading or a top-up into a recipe. It changes nothing by itself. */
export const recordRequest = 'tidemark/record';

export interface RecordParams {
  readonly uri: string;
  readonly recording: Recording;
}

/** The edit, in the protocol's own positions, for this version of the text; or what is wrong with the recording. */
export type RecordResult =
  | {
      readonly kind: 'edit';
      readonly version: number | null;
      readonly edit: {
        readonly range: {
          readonly start: { readonly line: number; readonly character: number };
          readonly end: { readonly line: number; readonly character: number };
        };
        readonly newText: string;
      };
      /** What the findings say of the new entry. */
      readonly findings: readonly string[];
    }
  | { readonly kind: 'refused'; readonly complaints: readonly RecordingComplaint[] };

/** Asks what has changed in a recipe since the texts that are given. */
export const reviewRequest = 'tidemark/review';

export interface ReviewParams {
  readonly uri: string;
  /** What the old state is called: `the last commit`. */
  readonly before: string;
  /** The old texts of the recipe and of what it uses, as far as they were asked for; null for a file that was not there. */
  readonly texts: readonly { readonly uri: string; readonly text: string | null }[];
}

export type ReviewResult =
  /** The comparison as plain text. */
  | { readonly kind: 'review'; readonly text: string }
  /** The old texts of these files are needed too: ask again with them. */
  | { readonly kind: 'wants'; readonly uris: readonly string[] }
  /** The server does not know the recipe. */
  | { readonly kind: 'unknown' };

/** Asks for the bench sheet of a batch or of a day. */
export const sheetRequest = 'tidemark/sheet';

export interface SheetParams {
  readonly uri: string;
  readonly about: SheetAbout;
}

/** A batch by its name, or a day as recipes write it: `2027-03-01`. */
export type SheetAbout = { readonly batch: string } | { readonly day: string };

export type SheetResult =
  /** One HTML file, to show and to print. */
  | { readonly kind: 'sheet'; readonly html: string }
  /** There is none, and why, in a sentence. */
  | { readonly kind: 'refused'; readonly says: string };
