// What a grower wants written down, in the words as they were typed: the one shape in which the command line and the editor hand a
// reading or a top-up to those who write it into the file.

export type Recording = PlantingRecording | BatchRecording;

/** An entry of the log. */
export interface PlantingRecording {
  readonly kind: 'planting';
  readonly planting: string;
  /** The day, as `2027-03-01`. */
  readonly on: string;
  readonly pH?: string | undefined;
  readonly EC?: string | undefined;
  readonly level?: string | undefined;
  /** What went into each container, and from where. */
  readonly topUp?: {
    readonly volume: string;
    readonly batch?: string | undefined;
    readonly water?: string | undefined;
  };
  readonly note?: string | undefined;
}

/** A reading of a batch. */
export interface BatchRecording {
  readonly kind: 'batch';
  readonly batch: string;
  /** What was added before it, by the names of adjusters and feeds. */
  readonly add?: readonly { readonly name: string; readonly amount: string }[];
  readonly pH?: string | undefined;
  readonly EC?: string | undefined;
}

/** The part of a recording that a complaint is about; `entry` is the whole of it. */
export type RecordingPart =
  | 'planting'
  | 'batch'
  | 'on'
  | 'pH'
  | 'EC'
  | 'level'
  | 'volume'
  | 'from'
  | 'water'
  | 'note'
  | 'add'
  | 'entry';

export interface RecordingComplaint {
  readonly about: RecordingPart;
  readonly says: string;
}
